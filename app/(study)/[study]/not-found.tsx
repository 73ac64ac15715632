/** Within a study, so that the ways to its other screens stay: a motor that an import took back, a version, a table. */
export default function NotFoundInStudy() {
  return (
    <main id="main" className="alone">
      <h1>There is no such page</h1>
      <p>
        The address is wrong, or what it showed has been removed from this study. Its screens are where they were: choose one.
      </p>
    </main>
  );
}
