import type { Metadata } from 'next';
import { Head } from '@/app/_ui/head';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { Typeset } from '@/app/_ui/typeset';
import { type FormulaEntry, loadFormulas, loadMethods } from '@/lib/features/reference/loaders';

export const metadata: Metadata = { title: 'Method' };

/** Every relation that the figures are computed with, from the same declarations that compute them. */
export default function MethodScreen() {
  const sheets = loadFormulas();
  return (
    <main id="main" className={sheet.main}>
      <h1>Method</h1>
      <p className={sheet.answer}>
        Every figure comes from the relations below. They are declared once: the program computes with them, sets them here, and
        shows them with numbers behind each figure.
      </p>
      <p className={sheet.soft}>
        Doubt is carried by first-order propagation through the partial derivatives of each relation (GUM 5.1), source by source,
        so that two figures that rest on one stamp or meter are correlated. Shown is the 95 % interval, 1.96 standard
        uncertainties.
      </p>
      <section className={sheet.section} aria-labelledby="ways">
        <h2 id="ways">Ways to the load</h2>
        <ScrollRegion label="Table of the ways to the load">
          <table {...TABLE} className={`${sheet.table} ${sheet.lines}`}>
            <thead {...GROUP}>
              <tr {...ROW}>
                <Head>Way</Head>
                <Head>Needs the columns</Head>
                <Head>Holds for</Head>
                <Head>Source</Head>
                <Head>Manual</Head>
              </tr>
            </thead>
            <tbody {...GROUP}>
              {loadMethods().map((method) => (
                <tr key={method.id} {...ROW}>
                  <th {...ROW_HEAD} scope="row">
                    {method.title}
                  </th>
                  <td {...CELL} data-name="Needs">
                    <code>{method.needs.join(', ')}</code>
                  </td>
                  <td {...CELL} data-name="Holds for">
                    {method.validity}
                  </td>
                  <td {...CELL} data-name="Source">
                    {method.source}
                  </td>
                  <td {...CELL} data-name="Manual">
                    <code>{method.page}</code>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollRegion>
      </section>
      <nav aria-label="Groups of relations">
        <ul className={sheet.links}>
          {sheets.map((group) => (
            <li key={group.id}>
              <a href={`#${group.id}`}>{group.title}</a>
            </li>
          ))}
        </ul>
      </nav>
      {sheets.map((group) => (
        <section key={group.id} className={sheet.section} aria-labelledby={group.id}>
          <h2 id={group.id}>{group.title}</h2>
          {group.formulas.map((formula) => (
            <Relation key={formula.id} formula={formula} />
          ))}
        </section>
      ))}
    </main>
  );
}

function Relation({ formula }: { readonly formula: FormulaEntry }) {
  return (
    <article className={sheet.formula} id={formula.id} aria-labelledby={`${formula.id}-title`}>
      <h3 id={`${formula.id}-title`}>
        {formula.title} <span className={sheet.soft}>{formula.unit === '1' ? '' : formula.unit}</span>
      </h3>
      <Typeset tex={`${formula.symbol} = ${formula.tex}`} />
      <ul className={sheet.soft}>
        {formula.inputs.map((input) => (
          <li key={input.name}>
            <Inline tex={input.symbol} /> {input.meaning}
            {input.unit === '1' ? '' : `, ${input.unit}`}
          </li>
        ))}
      </ul>
      <p className={sheet.soft}>
        Holds for: {formula.valid} Source: {formula.source}
      </p>
    </article>
  );
}

/** A symbol within a line of text. */
function Inline({ tex }: { readonly tex: string }) {
  return <Typeset tex={tex} inline />;
}
