/** The decimal signs to choose from, each with a number that has it. */
export function DecimalOptions() {
  return (
    <>
      <option value=".">point: 0.52</option>
      <option value=",">comma: 0,52</option>
    </>
  );
}
