/** The pen for PDF. Heavy (it carries a font engine): load it when a sheet is asked for, not before. */
import fontkit from '@cantoo/fontkit'
import type { PDFFont, PDFImage, PDFName, PDFOperator, PDFPage } from '@cantoo/pdf-lib'
import {
  appendBezierCurve,
  beginText,
  clip,
  closePath,
  concatTransformationMatrix,
  drawObject,
  endPath,
  endText,
  fill,
  fillAndStroke,
  LineCapStyle,
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
  setLineCap,
  setLineJoin,
  setLineWidth,
  setStrokingGrayscaleColor,
  setStrokingRgbColor,
  setTextMatrix,
  setTextRenderingMode,
  showText,
  stroke,
  TextRenderingMode,
} from '@cantoo/pdf-lib'
import type { Drawing, InkShape, Point, WordMark } from '../../drawing/pen/marks.ts'
import { pictureMatrix } from '../../drawing/pen/svg-values.ts'
import { bytesOf } from '../../paper/design/picture.ts'
import { corners } from '../marks/clip.ts'
import { wordWidth } from '../marks/letters.ts'
import type { Colour } from '../marks/looks.ts'
import { dashesOf, inkOf, lookOf } from '../marks/looks.ts'
import type { Painting } from '../marks/painting.ts'
import { FOLD_SEAM, SEAM } from '../marks/painting.ts'
import type { SheetMark, SheetPath, Told } from '../marks/setting.ts'
import { pictureWords } from '../marks/setting.ts'
import type { SheetPage } from '../pages/layout.ts'
import type { SheetFont } from './font.ts'
import { imagesIn, pictureForm, pictureInks } from './pdf-picture.ts'
import type { ToldOperators } from './pdf-tags.ts'
import { tagsFor, toldOn } from './pdf-tags.ts'

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

/** Straight runs of points: y runs down on the page and up in a PDF. */
const straight = (runs: readonly (readonly Point[])[], closed: boolean, height: number): PDFOperator[] =>
  runs.flatMap((run) => [
    ...run.map(([x, y], k) => (k === 0 ? moveTo(pt(x), pt(height - y)) : lineTo(pt(x), pt(height - y)))),
    ...(closed ? [closePath()] : []),
  ])

/** Cubics: a start, then three points each. */
const bent = (runs: readonly (readonly Point[])[], closed: boolean, height: number): PDFOperator[] =>
  runs.flatMap((run) => {
    const at = run.map(([x, y]): Point => [pt(x), pt(height - y)])
    const [start, ...rest] = at
    if (!start) return []
    const curves: PDFOperator[] = []
    for (let k = 0; k + 2 < rest.length; k += 3) {
      const [a, b, c] = rest.slice(k, k + 3) as [Point, Point, Point]
      curves.push(appendBezierCurve(a[0], a[1], b[0], b[1], c[0], c[1]))
    }
    return [moveTo(start[0], start[1]), ...curves, ...(closed ? [closePath()] : [])]
  })

/** The names by which a page calls its pictures, by their addresses. */
type Pictures = ReadonlyMap<string, PDFName>

/** A picture: in a PDF it is 1 wide and 1 high, its lower left corner at the origin (ISO 32000-1:2008, 8.9.5). */
function pictured(one: InkShape, height: number, pictures: Pictures): PDFOperator[] {
  const name = pictures.get(one.picture ?? '')
  if (!name) return []
  const [a, b, c, d, e, f] = pictureMatrix(one.runs[0] ?? [])
  return [
    pushGraphicsState(),
    concatTransformationMatrix(pt(a), pt(-b), pt(-c), pt(d), pt(e + c), pt(height - f - d)),
    drawObject(name),
    popGraphicsState(),
  ]
}

/** A shape in colour, by the non-zero rule. */
function shape(one: InkShape, height: number, pictures: Pictures): PDFOperator[] {
  const { runs, bends, closed, fill: inner, line, width } = one
  if (one.picture !== undefined) return pictured(one, height, pictures)
  if (inner === null && line === null) return []
  return [
    ...(inner === null ? [] : [fillColour(inner as Colour)]),
    ...(line === null ? [] : [strokeColour(line as Colour), setLineWidth(pt(width))]),
    ...(bends ? bent : straight)(runs, closed, height),
    inner === null ? stroke() : line === null ? fill() : fillAndStroke(),
  ]
}

const WHITE: Colour = '#ffffff'

/** The pieces in colour, each panel within its outline, and the paper that stays white. */
function painted(
  { panels, seams, areas, bands }: Painting,
  height: number,
  pictures: Pictures,
): PDFOperator[] {
  return [
    setDashPattern([], 0),
    setLineCap(LineCapStyle.Round),
    setLineWidth(pt(SEAM)),
    ...panels.flatMap(({ outline, paper, shapes }) => [
      ...(paper === null
        ? []
        : [fillColour(paper), strokeColour(paper), ...straight([outline], true, height), fillAndStroke()]),
      ...(shapes.length === 0
        ? []
        : [
            pushGraphicsState(),
            ...straight([outline], true, height),
            clip(),
            endPath(),
            ...shapes.flatMap((one) => shape(one, height, pictures)),
            popGraphicsState(),
          ]),
    ]),
    setLineCap(LineCapStyle.Butt),
    setLineWidth(pt(FOLD_SEAM)),
    ...seams.flatMap(({ colour, runs }) => [
      strokeColour(colour),
      ...straight(runs, false, height),
      stroke(),
    ]),
    setLineCap(LineCapStyle.Round),
    ...(areas.length > 0 ? [fillColour(WHITE), ...straight(areas, true, height), fill()] : []),
    ...bands.flatMap(({ runs, closed, width }) => [
      strokeColour(WHITE),
      setLineWidth(pt(width)),
      ...straight(runs, closed, height),
      stroke(),
    ]),
  ]
}

function path(mark: SheetPath, height: number): PDFOperator[] {
  const { colour, width, round } = lookOf(mark.role)
  const { dash, phase } = dashesOf(mark)
  return [
    strokeColour(colour),
    setLineWidth(pt(width)),
    setDashPattern(dash.map(pt), pt(phase)),
    setLineCap(round ? LineCapStyle.Round : LineCapStyle.Butt),
    ...straight(mark.runs, mark.closed, height),
    stroke(),
  ]
}

const picturesIn = (painting: Painting | null): string[] =>
  painting?.panels.flatMap(({ shapes }) => shapes.flatMap(({ picture }) => picture ?? [])) ?? []

/** The drawings of the screen that the pages show, each once. */
const drawingsOn = (pages: readonly SheetPage[]): ReadonlySet<Drawing> =>
  new Set(pages.flatMap(({ marks }) => marks.flatMap((mark) => (mark.mark === 'path' && mark.picture) || [])))

const paintingsOf = ({ painting, part }: SheetPage): readonly (Painting | null)[] => [
  part?.painting ?? null,
  painting,
]

/** Every picture of the pages, each once. What cannot be read is left out: the paper stays as it is there. */
async function embeddedPictures(
  pdf: PDFDocument,
  pages: readonly SheetPage[],
): Promise<Map<string, PDFImage>> {
  const found = new Map<string, PDFImage>()
  const drawn = [...drawingsOn(pages)].flatMap(imagesIn)
  for (const picture of new Set([...pages.flatMap(paintingsOf).flatMap(picturesIn), ...drawn])) {
    const file = bytesOf(picture)
    if (!file) continue
    try {
      found.set(picture, await (file.type === 'png' ? pdf.embedPng(file.bytes) : pdf.embedJpg(file.bytes)))
    } catch {
      // A file that only begins like a picture: a browser does not show it either.
    }
  }
  return found
}

function namedPictures(
  page: PDFPage,
  painting: Painting | null,
  all: ReadonlyMap<string, PDFImage>,
): Pictures {
  const named = new Map<string, PDFName>()
  for (const picture of picturesIn(painting)) {
    const image = all.get(picture)
    if (image && !named.has(picture)) named.set(picture, page.node.newXObject('Picture', image.ref))
  }
  return named
}

/** One file of a font, embedded. */
interface Face {
  readonly font: PDFFont
  readonly letters: ReadonlySet<number>
}

/** A file's faces on a page, under the names by which that page calls them. */
interface NamedFace extends Face {
  readonly key: PDFName
}

/** Parts of a text, each with the first face that has its letters. */
function byFace(text: string, faces: readonly NamedFace[]): { text: string; face: NamedFace }[] {
  const runs: { text: string; face: NamedFace }[] = []
  for (const letter of text) {
    const found = faces.find(({ letters }) => letters.has(letter.codePointAt(0) ?? 0))
    const face = found ?? faces[0]
    if (!face) throw new RangeError('a font needs at least one file for each weight')
    // A letter of an alphabet that the typeface does not have.
    const shown = found ? letter : '?'
    const last = runs.at(-1)
    if (last && last.face === face) last.text += shown
    else runs.push({ text: shown, face })
  }
  return runs
}

/** White round the words of a picture, mm: they stay legible on lines and card. */
const HALO = 0.7

function words(mark: WordMark, height: number, faces: readonly NamedFace[], goesOn = false): PDFOperator[] {
  const { text, size, bold, anchor, at } = mark
  const width = wordWidth(text, size, bold)
  const turn = (-(mark.turn ?? 0) * Math.PI) / 180
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  let along = anchor === 'start' ? 0 : anchor === 'middle' ? -width / 2 : -width
  return [
    fillColour(inkOf(mark.role)),
    beginText(),
    // Where a paragraph goes on, a space parts the words for who hears them (ISO 32000-1:2008, 14.8.2.5).
    ...byFace(goesOn ? `${text} ` : text, faces).flatMap(({ text, face: { font, key } }) => {
      const [x, y] = [at[0] + along * cos, at[1] - along * sin]
      along += font.widthOfTextAtSize(text, size)
      return [
        setFontAndSize(key, pt(size)),
        setTextMatrix(cos, sin, -sin, cos, pt(x), pt(height - y)),
        showText(font.encodeText(text)),
      ]
    }),
    endText(),
  ]
}

/** All that a page shows, its part of a large piece first. */
const marksOf = ({ marks, part }: SheetPage): readonly SheetMark[] => [
  ...(part?.marks ?? []),
  ...marks,
  ...marks.flatMap(pictureWords),
]

const codesOf = (pages: readonly SheetPage[], bold: boolean): ReadonlySet<number> =>
  new Set(
    pages.flatMap((page) =>
      marksOf(page).flatMap((mark) =>
        mark.mark === 'word' && (mark.bold ?? false) === bold
          ? [...mark.text].map((letter) => letter.codePointAt(0) ?? 0)
          : [],
      ),
    ),
  )

/** Embeds the files of one weight that have letters to give. */
async function embedded(
  pdf: PDFDocument,
  files: readonly Uint8Array[],
  needed: ReadonlySet<number>,
  weight: 'Regular' | 'Bold',
): Promise<Face[]> {
  const faces: Face[] = []
  const missing = new Set(needed)
  for (const [k, file] of files.entries()) {
    const opened = fontkit.create(file)
    if (!('characterSet' in opened)) throw new RangeError('a font file must hold one font, not a collection')
    const letters = new Set(opened.characterSet)
    const gives = [...missing].filter((code) => letters.has(code))
    // The first file also stands in for letters that none has.
    if (gives.length === 0 && k > 0) continue
    for (const code of gives) missing.delete(code)
    const font = await pdf.embedFont(file, {
      subset: true,
      // A part of a font is marked by six capitals and a plus (ISO 32000-1:2008, 9.6.4).
      customName: `HINGE${String.fromCharCode(65 + k)}+AtkinsonHyperlegibleNext-${weight}`,
      features: { liga: false, kern: false },
    })
    faces.push({ font, letters })
  }
  return faces
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
  const regular = await embedded(pdf, font.regular, codesOf(pages, false), 'Regular')
  const bold = await embedded(pdf, font.bold, codesOf(pages, true), 'Bold')
  const pictures = await embeddedPictures(pdf, pages)
  const inks = pictureInks(pdf)
  const forms = new Map([...drawingsOn(pages)].map((one) => [one, pictureForm(pdf, one, inks, pictures)]))
  const tags = tagsFor(pdf)
  for (const sheet of pages) {
    const { box, marks, painting, part, paper } = sheet
    const [, , width, height] = box
    const { stretch = 1 } = paper
    const page = pdf.addPage([pt(width * stretch), pt(height * stretch)])
    const named = (faces: readonly Face[]): NamedFace[] =>
      faces.map((face) => ({ ...face, key: page.node.newFontDictionary(face.font.name, face.font.ref) }))
    const [plain, strong] = [named(regular), named(bold)]
    const toldBy = toldOn(sheet)
    const set = (mark: WordMark, goesOn = false): PDFOperator[] =>
      words(mark, height, mark.bold ? strong : plain, goesOn)
    const pictured = (mark: SheetPath): PDFOperator[] => {
      const form = mark.picture && forms.get(mark.picture)
      if (!mark.picture || !form) return path(mark, height)
      const said = pictureWords(mark)
      return [
        ...placed(mark, mark.picture, page.node.newXObject('Drawing', form), height),
        ...said.flatMap((word) => [
          pushGraphicsState(),
          setTextRenderingMode(TextRenderingMode.Outline),
          setLineWidth(pt(2 * HALO)),
          strokeColour(WHITE),
          ...set(word),
          popGraphicsState(),
        ]),
        ...said.flatMap((word) => set(word)),
      ]
    }
    const drawn = (one: Pick<SheetPage, 'marks' | 'painting'>, told: Told | null): ToldOperators[] => [
      ...(one.painting
        ? [{ told, operators: painted(one.painting, height, namedPictures(page, one.painting, pictures)) }]
        : []),
      ...one.marks.map((mark, k) => {
        const goesOn = mark.told !== undefined && one.marks[k + 1]?.told === mark.told
        return { told: toldBy(mark), operators: mark.mark === 'word' ? set(mark, goesOn) : pictured(mark) }
      }),
    ]
    const drawing = sheet.placed.length > 0 ? toldBy(NO_MARK) : null
    page.pushOperators(
      pushGraphicsState(),
      ...(stretch === 1 ? [] : [concatTransformationMatrix(stretch, 0, 0, stretch, 0, 0)]),
      setLineJoin(LineJoinStyle.Round),
      ...tags.marked(page, [
        ...(part
          ? [
              { told: drawing, operators: [pushGraphicsState(), ...clipped(corners(part.clip), height)] },
              ...drawn(part, drawing).map(({ operators }) => ({ told: drawing, operators })),
              { told: drawing, operators: [popGraphicsState()] },
            ]
          : []),
        ...drawn({ marks, painting }, drawing),
      ]),
      popGraphicsState(),
    )
  }
  tags.finish()
  return pdf.save()
}

/** Stands for all that is drawn on a page with pieces. */
const NO_MARK: SheetMark = { mark: 'path', runs: [], closed: false, role: 'guide' }

const clipped = (outline: readonly Point[], height: number): PDFOperator[] => [
  ...straight([outline], true, height),
  clip(),
  endPath(),
]

/** A drawing in the frame that its mark tells: its y runs down, that of a PDF up. */
function placed({ runs }: SheetPath, { box }: Drawing, name: PDFName, height: number): PDFOperator[] {
  const [[left, top] = [0, 0], [right] = [0, 0]] = runs[0] ?? []
  const [x, y, wide] = box
  const scale = (right - left) / wide
  return [
    pushGraphicsState(),
    concatTransformationMatrix(
      ...([pt(scale), 0, 0, -pt(scale), pt(left - scale * x), pt(height - top + scale * y)] as const),
    ),
    drawObject(name),
    popGraphicsState(),
  ]
}
