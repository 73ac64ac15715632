import temml from 'temml';
import styles from './derivation-view.module.css';

/** A formula as MathML, made on the server from the formula sheets: never from what a reader typed. Its TeX stands in the annotation. */
export function Typeset({ tex }: { readonly tex: string }) {
  const markup = temml.renderToString(tex, { displayMode: true, throwOnError: false, annotate: true });
  return <div className={styles.formula} dangerouslySetInnerHTML={{ __html: markup }} />;
}
