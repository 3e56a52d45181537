/** The pen for PDF. Heavy (it carries a font engine): load it when a sheet is asked for, not before. */
import fontkit from '@cantoo/fontkit'
import type { PDFFont, PDFOperator, PDFPage } from '@cantoo/pdf-lib'
import {
  beginText,
  closePath,
  endText,
  LineJoinStyle,
  lineTo,
  moveTo,
  PDFDocument,
  PrintScaling,
  popGraphicsState,
  pushGraphicsState,
  setDashPattern,
  setFillingGrayscaleColor,
  setFillingRgbColor,
  setFontAndSize,
  setLineJoin,
  setLineWidth,
  setStrokingGrayscaleColor,
  setStrokingRgbColor,
  setTextMatrix,
  showText,
  stroke,
} from '@cantoo/pdf-lib'
import type { PathMark, WordMark } from '../drawing/marks.ts'
import type { SheetFont } from './font.ts'
import type { SheetPage } from './layout.ts'
import { wordWidth } from './letters.ts'
import type { Colour } from './looks.ts'
import { inkOf, lookOf } from './looks.ts'

/** Millimetres to PDF units of 1/72 inch (ISO 32000-1:2008, 8.3.2.3), kept to a tenth of a micrometre. */
const pt = (mm: number): number => Number(((mm * 72) / 25.4).toFixed(4))

const parts = (colour: Colour): readonly [number, number, number] => {
  const value = Number.parseInt(colour.slice(1), 16)
  return [(value >> 16) / 255, ((value >> 8) & 255) / 255, (value & 255) / 255]
}
const isGrey = ([r, g, b]: readonly [number, number, number]): boolean => r === g && g === b

/** Grey as grey: a printer then leaves its coloured inks alone. */
function strokeColour(colour: Colour): PDFOperator {
  const [r, g, b] = parts(colour)
  return isGrey([r, g, b]) ? setStrokingGrayscaleColor(r) : setStrokingRgbColor(r, g, b)
}
function fillColour(colour: Colour): PDFOperator {
  const [r, g, b] = parts(colour)
  return isGrey([r, g, b]) ? setFillingGrayscaleColor(r) : setFillingRgbColor(r, g, b)
}

/** A line: y runs down on the page and up in a PDF. */
function path(mark: PathMark, height: number): PDFOperator[] {
  const { colour, width, dash } = lookOf(mark.role)
  const outline = mark.runs.flatMap((run) => [
    ...run.map(([x, y], k) => (k === 0 ? moveTo(pt(x), pt(height - y)) : lineTo(pt(x), pt(height - y)))),
    ...(mark.closed ? [closePath()] : []),
  ])
  return [
    strokeColour(colour),
    setLineWidth(pt(width)),
    setDashPattern(dash.map(pt), 0),
    ...outline,
    stroke(),
  ]
}

/** One file of a font, as a page knows it. */
interface Face {
  readonly font: PDFFont
  readonly letters: ReadonlySet<number>
}

/** Parts of a text, each with the first face that has its letters. */
function byFace(text: string, faces: readonly Face[]): { text: string; face: Face }[] {
  const runs: { text: string; face: Face }[] = []
  for (const letter of text) {
    const code = letter.codePointAt(0) ?? 0
    const face = faces.find(({ letters }) => letters.has(code))
    const known = face ?? faces[0]
    if (!known) throw new RangeError('a font needs at least one file for each weight')
    // A letter of an alphabet that the typeface does not have.
    const shown = face ? letter : '?'
    const last = runs.at(-1)
    if (last && last.face === known) last.text += shown
    else runs.push({ text: shown, face: known })
  }
  return runs
}

function words(mark: WordMark, page: PDFPage, faces: readonly Face[]): PDFOperator[] {
  const size = mark.size
  const width = wordWidth(mark.text, size, mark.bold)
  const start = mark.anchor === 'start' ? 0 : mark.anchor === 'middle' ? -width / 2 : -width
  const turn = (-(mark.turn ?? 0) * Math.PI) / 180
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  const height = page.getHeight()
  let along = start
  return [
    fillColour(inkOf(mark.role)),
    beginText(),
    ...byFace(mark.text, faces).flatMap(({ text, face: { font } }) => {
      const [x, y] = [mark.at[0] + along * cos, mark.at[1] - along * sin]
      along += font.widthOfTextAtSize(text, size)
      return [
        setFontAndSize(page.node.newFontDictionary(font.name, font.ref), pt(size)),
        setTextMatrix(cos, sin, -sin, cos, pt(x), Number((height - pt(y)).toFixed(4))),
        showText(font.encodeText(text)),
      ]
    }),
    endText(),
  ]
}

/** Subset fonts are marked by six capitals and a plus (ISO 32000-1:2008, 9.6.4). */
const TAGS = ['HINGEA', 'HINGEB', 'HINGEC', 'HINGED']

async function embedded(pdf: PDFDocument, font: SheetFont): Promise<{ regular: Face[]; bold: Face[] }> {
  let count = 0
  const embed = async (file: Uint8Array, weight: string): Promise<Face> => {
    const tag = TAGS[count++ % TAGS.length]
    const made = await pdf.embedFont(file, {
      subset: true,
      customName: `${tag}+AtkinsonHyperlegibleNext-${weight}`,
      features: { liga: false, kern: false },
    })
    return { font: made, letters: new Set(made.getCharacterSet()) }
  }
  const all = async (files: readonly Uint8Array[], weight: string): Promise<Face[]> => {
    const faces: Face[] = []
    for (const file of files) faces.push(await embed(file, weight))
    return faces
  }
  return { regular: await all(font.regular, 'Regular'), bold: await all(font.bold, 'Bold') }
}

/**
 * The pages as one PDF: the same bytes for the same pages and font. Vector lines with true dash patterns,
 * real text in an embedded part of the font, pages exact to 0.0001 pt, and a wish to the print dialogue
 * not to scale (/PrintScaling /None, ISO 32000-1:2008, 12.2).
 */
export async function pagesPdf(
  pages: readonly SheetPage[],
  title: string,
  font: SheetFont,
): Promise<Uint8Array> {
  const pdf = await PDFDocument.create({ updateMetadata: false })
  pdf.registerFontkit(fontkit)
  pdf.setTitle(title, { showInWindowTitleBar: true })
  pdf.setCreator('Hingebook')
  pdf.setLanguage('en')
  pdf.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None)
  const faces = await embedded(pdf, font)
  for (const { box, marks } of pages) {
    const [, , width, height] = box
    const page = pdf.addPage([pt(width), pt(height)])
    page.pushOperators(
      pushGraphicsState(),
      setLineJoin(LineJoinStyle.Round),
      ...marks.flatMap((mark) =>
        mark.mark === 'word' ? words(mark, page, mark.bold ? faces.bold : faces.regular) : path(mark, height),
      ),
      popGraphicsState(),
    )
  }
  return pdf.save()
}
