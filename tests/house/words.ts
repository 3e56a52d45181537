import ts from 'typescript'

/** Attributes and fields that a reader sees or hears. */
const HEARD = /^(label|title|alt|placeholder|aria-label|aria-description|says)$/

/** Attributes that hold names and drawings, and no words. */
const SYNTAX = /^(class|className|class:list|d|style|viewBox|transform|points)$/

/** What takes a selector. */
const SELECTS = /^(querySelector|querySelectorAll|closest|matches)$/

/** What a programmer meets, and no reader. */
const THROWN = /^(Error|RangeError|TypeError)$/

/** Two words of letters with a space between. Of one letter alone are few words. */
const WORDS = /(\p{L}{2}|(?<!\p{L})[AaI])[’”),.:;!?…]*\s+[“(]?(\p{L}{2}|[AaI](?!\p{L}))/u

/** A word; what is written in capitals alone is the name of a format. */
const WORD = /\p{L}\p{Ll}/u

/** What stands for a value in a template. */
const VALUE = '{}'

/** A value between spaces: what stands on either side belongs together. */
const BETWEEN = /(?<=^|\s)\{\}(?=[\s,.:;]|$)/g

/** A tag of SVG or HTML, or the beginning of one. */
const TAG = /<[a-z/!][^>]*(>|$)/gi

/** A question to the style sheet, a style, and a script that stands in a page. */
const CODE = /^\([\w-]+: [\w-]+\)$|;(\s*\})?\s*$|^\(\(\) => \{/

export interface Told {
  readonly line: number
  readonly text: string
}

/** Text for readers in a file of code (`.ts`, `.tsx`) or a page (`.astro`). */
export function wordsIn(file: string, text: string): Told[] {
  const code = file.endsWith('.astro') ? pageCode(text) : text
  const kind = file.endsWith('.ts') ? ts.ScriptKind.TS : ts.ScriptKind.TSX
  const source = ts.createSourceFile(file, code, ts.ScriptTarget.ESNext, true, kind)
  const found = new Map<ts.Node, Told>()
  const add = (node: ts.Node, text: string): void => {
    const line = source.getLineAndCharacterOfPosition(node.getStart()).line + 1
    found.set(node, { line, text: text.replace(/\s+/g, ' ').trim() })
  }
  const visit = (node: ts.Node): void => {
    if (isPassedOver(node)) return
    if (isHeard(node)) for (const one of spoken(node)) if (isWord(written(one))) add(one, written(one))
    if (ts.isJsxText(node) && isWord(node.text)) add(node, node.text)
    if (isWritten(node) && isText(written(node))) add(node, written(node))
    ts.forEachChild(node, visit)
  }
  visit(source)
  return [...found.values()]
}

type Written = ts.StringLiteral | ts.NoSubstitutionTemplateLiteral | ts.TemplateExpression

const isWritten = (node: ts.Node): node is Written =>
  ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node) || ts.isTemplateExpression(node)

const written = (node: Written): string =>
  ts.isTemplateExpression(node)
    ? node.head.text + node.templateSpans.map(({ literal }) => VALUE + literal.text).join('')
    : node.text

const isText = (text: string): boolean =>
  !CODE.test(text) && WORDS.test(text.replace(TAG, heardIn).replace(BETWEEN, ''))

/** What a reader hears of a tag. */
const heardIn = (tag: string): string =>
  ` ${[...tag.matchAll(/\s([\w-]+)="([^"]*)"/g)].map(([, name = '', text]) => (HEARD.test(name) ? text : '')).join(' ')} `

/** Names of characters, as `&nbsp;`, are no words. */
const isWord = (text: string): boolean => !CODE.test(text) && WORD.test(text.replace(/&#?\w+;/g, ' '))

/** What is shown or read out as it is. */
function isHeard(node: ts.Node): boolean {
  if (ts.isJsxAttribute(node) || ts.isPropertyAssignment(node))
    return HEARD.test(node.name.getText().replace(/^['"]|['"]$/g, ''))
  return ts.isJsxExpression(node) && (ts.isJsxElement(node.parent) || ts.isJsxFragment(node.parent))
}

/** The texts that it may come to. */
function spoken(node: ts.Node | undefined): Written[] {
  if (node === undefined) return []
  if (isWritten(node)) return [node]
  if (ts.isJsxAttribute(node) || ts.isPropertyAssignment(node)) return spoken(node.initializer)
  if (ts.isJsxExpression(node) || ts.isParenthesizedExpression(node) || ts.isAsExpression(node))
    return spoken(node.expression)
  if (ts.isConditionalExpression(node)) return [...spoken(node.whenTrue), ...spoken(node.whenFalse)]
  if (!ts.isBinaryExpression(node)) return []
  const { left, operatorToken, right } = node
  const isEither = [
    ts.SyntaxKind.BarBarToken,
    ts.SyntaxKind.QuestionQuestionToken,
    ts.SyntaxKind.PlusToken,
  ].includes(operatorToken.kind)
  if (isEither) return [...spoken(left), ...spoken(right)]
  return operatorToken.kind === ts.SyntaxKind.AmpersandAmpersandToken ? spoken(right) : []
}

/** What nobody reads, with all that is in it. */
function isPassedOver(node: ts.Node): boolean {
  if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isTypeNode(node)) return true
  if (ts.isJsxAttribute(node)) return SYNTAX.test(node.name.getText())
  if (ts.isNewExpression(node)) return THROWN.test(node.expression.getText())
  return (
    ts.isCallExpression(node) &&
    ts.isPropertyAccessExpression(node.expression) &&
    SELECTS.test(node.expression.name.text)
  )
}

const blank = (text: string): string => text.replace(/[^\n]/g, ' ')

/** A page as code that the compiler reads, line by line where it stood: without styles, scripts and comments. */
export function pageCode(text: string): string {
  const [fence = '', head = ''] = /^---\n([\s\S]*?\n)---\n/.exec(text) ?? []
  const body = text
    .slice(fence.length)
    .replace(/<!doctype html>|<!--[\s\S]*?-->/gi, blank)
    .replace(/(<(script|style)\b[^>]*>)([\s\S]*?)(<\/\2>)/g, (_, open, __, inner, close) => {
      return `${open}${blank(inner)}${close}`
    })
    // `{name}` for `name={name}` is known to pages alone.
    .replace(/(\s)\{(\w+)\}/g, '$1{...$2}')
  return `${fence === '' ? '' : `\n${head}\n`};<>${body}</>`
}

/** What the compiler cannot read of a page's code. */
export const unreadable = (code: string): string[] =>
  (
    ts.transpileModule(code, {
      fileName: 'page.tsx',
      reportDiagnostics: true,
      compilerOptions: { jsx: ts.JsxEmit.Preserve, target: ts.ScriptTarget.ESNext },
    }).diagnostics ?? []
  ).map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' '))

/** Layers whose rooms are told apart. */
const WIDE = /^src\/(paper|site|widgets)\/[^/]+\//

/** The room that a file of `src` lies in. */
export const roomOf = (file: string): string =>
  file
    .split('/')
    .slice(0, WIDE.test(file) ? 3 : 2)
    .filter((part) => !part.includes('.'))
    .join('/')

/** What a words file gives to others. */
export function givenBy(file: string, text: string): string[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.ESNext, true)
  return source.statements.flatMap((one) => {
    const isGiven =
      ts.canHaveModifiers(one) && one.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)
    if (!isGiven) return []
    if (ts.isVariableStatement(one)) return one.declarationList.declarations.map(({ name }) => name.getText())
    return ts.isFunctionDeclaration(one) && one.name ? [one.name.text] : []
  })
}
