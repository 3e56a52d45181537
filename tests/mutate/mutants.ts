import ts from 'typescript'

/** One small wrong change to a source file. */
export interface Mutant {
  /** Path from the root. */
  readonly file: string
  /** First line is 1. */
  readonly line: number
  readonly kind: Kind
  readonly was: string
  readonly now: string
  /** Which part of the file is changed: where it begins and ends. */
  readonly start: number
  readonly end: number
}

export type Kind = 'sign' | 'bound' | 'comparison' | 'branch' | 'constant'

/** A mutant, and the text of the whole expression with the change made. */
interface Change {
  readonly mutant: Mutant
  readonly instead: string
}

const S = ts.SyntaxKind

/** What may stand for an operator instead. */
const OPERATORS: ReadonlyMap<string, readonly (readonly [Kind, string])[]> = new Map([
  ['+', [['sign', '-']]],
  ['-', [['sign', '+']]],
  ['*', [['sign', '/']]],
  ['/', [['sign', '*']]],
  ['+=', [['sign', '-=']]],
  ['-=', [['sign', '+=']]],
  ['*=', [['sign', '/=']]],
  ['/=', [['sign', '*=']]],
  [
    '<',
    [
      ['bound', '<='],
      ['comparison', '>='],
    ],
  ],
  [
    '<=',
    [
      ['bound', '<'],
      ['comparison', '>'],
    ],
  ],
  [
    '>',
    [
      ['bound', '>='],
      ['comparison', '<='],
    ],
  ],
  [
    '>=',
    [
      ['bound', '>'],
      ['comparison', '<'],
    ],
  ],
  ['===', [['comparison', '!==']]],
  ['!==', [['comparison', '===']]],
  ['&&', [['branch', '||']]],
  ['||', [['branch', '&&']]],
])

/** Calls whose name says a bound or a part of a direction, and what is easily taken for them. */
const CALLS: ReadonlyMap<string, string> = new Map([
  ['Math.min', 'Math.max'],
  ['Math.max', 'Math.min'],
  ['Math.floor', 'Math.ceil'],
  ['Math.ceil', 'Math.floor'],
  ['Math.sin', 'Math.cos'],
  ['Math.cos', 'Math.sin'],
])

/** Text, as far as the parser can see: it has no signs to turn. */
const isText = (node: ts.Expression): boolean =>
  ts.isStringLiteralLike(node) ||
  ts.isTemplateExpression(node) ||
  (ts.isParenthesizedExpression(node) && isText(node.expression)) ||
  (ts.isConditionalExpression(node) && isText(node.whenTrue)) ||
  (ts.isBinaryExpression(node) &&
    node.operatorToken.kind === S.PlusToken &&
    (isText(node.left) || isText(node.right)))

/** A number well away from the right one: whole ones by one, others half as large again, tolerances by four digits. */
function otherNumber(text: string): string {
  const value = Number(text.replaceAll('_', ''))
  if (Number.isInteger(value)) return String(value + 1)
  return String(value < 1e-3 ? value * 1e4 : value * 1.5)
}

/** Whether a condition may be forced: it decides a branch, and is no bare `true`. */
function isCondition(node: ts.Node): boolean {
  const { parent } = node
  if (node.kind === S.TrueKeyword) return false
  return (
    (ts.isIfStatement(parent) && parent.expression === node) ||
    (ts.isConditionalExpression(parent) && parent.condition === node)
  )
}

/** The changes of one expression, its parts left as they are. */
function changesOf(file: string, source: ts.SourceFile, node: ts.Node): Change[] {
  const text = source.text
  const [start, end] = [node.getStart(), node.end]
  const found: Change[] = []
  const put = (kind: Kind, part: ts.Node, now: string): void => {
    const line = source.getLineAndCharacterOfPosition(part.getStart()).line + 1
    const [from, to] = [part.getStart(), part.end]
    const mutant = { file, line, kind, was: text.slice(from, to), now, start: from, end: to }
    found.push({ mutant, instead: text.slice(start, from) + now + text.slice(to, end) })
  }
  if (isCondition(node)) for (const way of ['true', 'false']) put('branch', node, way)
  if (ts.isWhileStatement(node.parent) && node.parent.expression === node && node.kind !== S.TrueKeyword)
    put('branch', node, 'false')
  if (ts.isBinaryExpression(node) && !isText(node)) {
    for (const [kind, now] of OPERATORS.get(node.operatorToken.getText()) ?? [])
      put(kind, node.operatorToken, now)
  } else if (ts.isPrefixUnaryExpression(node)) {
    if (node.operator === S.MinusToken) put('sign', node, `(${node.operand.getText()})`)
    if (node.operator === S.ExclamationToken) put('branch', node, `!!(${node.operand.getText()})`)
  } else if (ts.isNumericLiteral(node)) {
    put('constant', node, otherNumber(node.text))
  } else if (ts.isPropertyAccessExpression(node)) {
    const other = CALLS.get(node.getText())
    if (other && ts.isCallExpression(node.parent)) put('bound', node, other)
  }
  return found
}

const parse = (file: string, text: string): ts.SourceFile =>
  ts.createSourceFile(file, text, ts.ScriptTarget.ESNext, true)

/** Types, imports and names of properties: nothing of it is ever worked out. */
const isSilent = (node: ts.Node): boolean =>
  ts.isTypeNode(node) ||
  ts.isImportDeclaration(node) ||
  ts.isInterfaceDeclaration(node) ||
  ts.isTypeAliasDeclaration(node) ||
  (ts.isNumericLiteral(node) && ts.isPropertyAssignment(node.parent) && node.parent.name === node)

/**
 * The mutants of one file: signs turned, comparisons turned and moved by their bound, conditions forced
 * either way, constants changed.
 */
export function mutantsOf(file: string, text: string): Mutant[] {
  const source = parse(file, text)
  const found: Mutant[] = []
  const visit = (node: ts.Node): void => {
    if (isSilent(node)) return
    if (node !== source) found.push(...changesOf(file, source, node).map(({ mutant }) => mutant))
    ts.forEachChild(node, visit)
  }
  visit(source)
  return found
}

/** Name of the number that says which mutant is on. */
export const SWITCH = '__mutant'

/** Name of the function that is told each mutant that a test comes by; it answers false. None: nobody asks. */
export const SEEN = '__seen'

/**
 * The file with all the given mutants in it, each behind a switch: the one whose number `globalThis.__mutant`
 * holds when the file is loaded is on.
 * @param numbers each mutant's number, from 1
 */
export function switched(file: string, text: string, numbers: ReadonlyMap<string, number>): string {
  const source = parse(file, text)
  const render = (node: ts.Node): string => {
    const start = node.getStart()
    if (isSilent(node)) return text.slice(start, node.end)
    let [out, at] = ['', start]
    ts.forEachChild(node, (child) => {
      const from = child.getStart()
      // Shorthand and the like may visit what has no text of its own.
      if (from < at || child.end < from) return
      out += text.slice(at, from) + render(child)
      at = child.end
    })
    out += text.slice(at, node.end)
    if (node === source) return out
    for (const { mutant, instead } of changesOf(file, source, node)) {
      const number = numbers.get(keyOf(mutant))
      if (number !== undefined)
        out = `(${SWITCH} === ${number} || ${SEEN}?.(${number}) ? (${instead}) : (${out}))`
    }
    // A statement must not begin with a bracket: it would be taken for the call of what stands before it.
    return ts.isExpressionStatement(node) && out.startsWith('(') && text[start] !== '(' ? `void ${out}` : out
  }
  return `const ${SWITCH} = globalThis.${SWITCH}, ${SEEN} = globalThis.${SEEN};\n${render(source)}`
}

export const keyOf = ({ file, start, end, now }: Mutant): string => `${file}:${start}-${end}:${now}`
