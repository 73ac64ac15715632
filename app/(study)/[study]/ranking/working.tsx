import sheet from '@/app/_ui/sheet-page.module.css';

/** Stands while a list over the whole fleet is worked out: every motor is evaluated anew for it. */
export function Working({ title }: { readonly title: string }) {
  return (
    <main id="main" className={sheet.main}>
      <h1>{title}</h1>
      <p role="status" className={sheet.answer}>
        The fleet is being worked through; a thousand motors take some seconds.
      </p>
    </main>
  );
}
