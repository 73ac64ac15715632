import temml from 'temml';
import styles from './derivation-view.module.css';

/** A formula as MathML, made on the server from the formula sheets: never from what a reader typed. Its TeX stands in the annotation. */
export function Typeset({ tex, inline = false }: { readonly tex: string; readonly inline?: boolean }) {
  const markup = temml.renderToString(tex, { displayMode: !inline, throwOnError: false, annotate: true });
  if (inline) return <span dangerouslySetInnerHTML={{ __html: markup }} />;
  return <div className={styles.formula} dangerouslySetInnerHTML={{ __html: markup }} />;
}
