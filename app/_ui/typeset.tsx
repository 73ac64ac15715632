import temml from 'temml';
import { FormulaFrame } from './formula-frame';

/** A formula as MathML, made on the server from the formula sheets: never from what a reader typed. Its TeX stands in the annotation. */
export function Typeset({ tex, inline = false }: { readonly tex: string; readonly inline?: boolean }) {
  const markup = temml.renderToString(tex, { displayMode: !inline, throwOnError: false, annotate: true });
  const math = <span dangerouslySetInnerHTML={{ __html: markup }} />;
  return inline ? math : <FormulaFrame>{math}</FormulaFrame>;
}
