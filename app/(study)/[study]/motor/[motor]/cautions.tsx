/** What whoever goes to a motor with a meter has to mind; on the form for a reading, and on paper that sends somebody there. */
export function Cautions() {
  return (
    <p>
      A live reading is energized work: qualified persons only, within the panel’s shock and arc-flash boundaries, meters of the
      place’s category. Never open a current-transformer secondary. Guards stay on; a stroboscope makes a turning shaft look
      still. Before insulation or resistance tests: isolate, lock out, prove dead, disconnect drives, capacitors and arresters,
      and discharge afterwards. Never raise the process load for a reading without the process owner. Local codes, the site’s
      rules and licensed persons decide.
    </p>
  );
}
