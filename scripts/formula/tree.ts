import {
  type ConstantNode,
  derivative,
  type FunctionNode,
  type MathNode,
  type OperatorNode,
  type ParenthesisNode,
  parse,
  type SymbolNode,
  simplifyConstant,
} from 'mathjs';
import { CONSTANTS } from '@/lib/engine/formula/constants';

/** How each function that a formula may use is written natively and in a spreadsheet. */
const FUNCTIONS: Readonly<Record<string, { native: string; cell: string }>> = {
  sqrt: { native: 'Math.sqrt', cell: 'SQRT' },
  exp: { native: 'Math.exp', cell: 'EXP' },
  log: { native: 'Math.log', cell: 'LN' },
  log10: { native: 'Math.log10', cell: 'LOG10' },
  abs: { native: 'Math.abs', cell: 'ABS' },
  cos: { native: 'Math.cos', cell: 'COS' },
  sin: { native: 'Math.sin', cell: 'SIN' },
};

/** Parses an expression; refuses names that are neither inputs nor constants and functions that cannot be written out. */
export function parseExpression(id: string, expression: string, names: readonly string[]): MathNode {
  const tree = parse(expression);
  tree.traverse((node, path, parent) => {
    if (node.type === 'FunctionNode' && !FUNCTIONS[functionName(node)])
      throw new Error(`${id}: function ${functionName(node)} cannot be written out`);
    if (node.type !== 'SymbolNode' || (parent?.type === 'FunctionNode' && path === 'fn')) return;
    const name = (node as SymbolNode).name;
    if (!names.includes(name) && !(name in CONSTANTS)) throw new Error(`${id}: ${name} is neither an input nor a constant`);
  });
  return tree;
}

function functionName(node: MathNode): string {
  const fn = (node as FunctionNode).fn;
  return typeof fn === 'string' ? fn : fn.name;
}

/** Partial derivative by one input, tidied. */
export function partial(tree: MathNode, name: string): MathNode {
  return simplifyConstant(derivative(tree, name, { simplify: true }));
}

interface Writer {
  symbol(name: string): string;
  call(name: string, args: string[]): string;
  power(base: string, exponent: string): { text: string; level: number };
}

const PRECEDENCE: Readonly<Record<string, number>> = { '+': 1, '-': 1, '*': 2, '/': 2, unary: 3, '^': 4 };

function write(node: MathNode, writer: Writer): { text: string; level: number } {
  switch (node.type) {
    case 'ConstantNode':
      return { text: String((node as ConstantNode).value), level: Number((node as ConstantNode).value) < 0 ? 3 : 9 };
    case 'SymbolNode':
      return { text: writer.symbol((node as SymbolNode).name), level: 9 };
    case 'ParenthesisNode':
      return write((node as ParenthesisNode).content, writer);
    case 'FunctionNode':
      return {
        text: writer.call(
          functionName(node),
          (node as FunctionNode).args.map((arg) => write(arg, writer).text),
        ),
        level: 9,
      };
    case 'OperatorNode':
      return operator(node as OperatorNode, writer);
    default:
      throw new Error(`an expression may not hold a ${node.type}`);
  }
}

function operator(node: OperatorNode, writer: Writer): { text: string; level: number } {
  const args = node.args.map((arg) => write(arg, writer));
  const [left, right] = args;
  if (!left) throw new Error('an operator without operands');
  const wrap = (part: { text: string; level: number }, needed: number) => (part.level < needed ? `(${part.text})` : part.text);
  if (!right) return { text: `-${wrap(left, 3)}`, level: 3 };
  const level = PRECEDENCE[node.op];
  if (level === undefined) throw new Error(`operator ${node.op} cannot be written out`);
  if (node.op === '^') return writer.power(wrap(left, 5), right.level < 5 ? `(${right.text})` : right.text);
  const rest = args.slice(1).map((part) => wrap(part, node.op === '-' || node.op === '/' ? level + 1 : level));
  return { text: [wrap(left, level), ...rest].join(` ${node.op} `), level };
}

/** The expression as JavaScript over the input names; constants are written as numbers. */
export function nativeText(tree: MathNode): string {
  return write(tree, {
    symbol: (name) => (name in CONSTANTS ? String(CONSTANTS[name as keyof typeof CONSTANTS].value) : name),
    call: (name, args) => `${FUNCTIONS[name]?.native}(${args.join(', ')})`,
    power: (base, exponent) =>
      exponent === '2' && /^\w+$/.test(base)
        ? { text: `${base} * ${base}`, level: 2 }
        : { text: `${base} ** ${exponent}`, level: 4 },
  }).text;
}

/** The expression as a spreadsheet formula; inputs stand in braces. */
export function cellText(tree: MathNode): string {
  return write(tree, {
    symbol: (name) => (name in CONSTANTS ? String(CONSTANTS[name as keyof typeof CONSTANTS].value) : `{${name}}`),
    call: (name, args) => `${FUNCTIONS[name]?.cell}(${args.join(', ')})`,
    power: (base, exponent) => ({ text: `${base} ^ ${exponent}`, level: 4 }),
  }).text;
}

/** The expression in TeX, with the declared symbols. */
export function texText(tree: MathNode, symbols: Readonly<Record<string, string>>): string {
  return tree
    .toTex({
      parenthesis: 'auto',
      handler: (node: MathNode) => {
        if (node.type !== 'SymbolNode') return undefined;
        const name = (node as SymbolNode).name;
        const symbol = symbols[name] ?? CONSTANTS[name as keyof typeof CONSTANTS]?.symbol;
        return symbol === undefined ? undefined : ` ${symbol}`;
      },
    })
    .replaceAll('~', ' ')
    .trim();
}
