/**
 * What a page holds for who has it read out (ISO 32000-1:2008, 14.7 and 14.8): headings, paragraphs and figures with
 * their words, in reading order. All else is marked as an artifact.
 */
import type { PDFOperator as Operator, PDFDocument, PDFPage, PDFRef } from '@cantoo/pdf-lib'
import { PDFHexString, PDFName, PDFOperator, PDFOperatorNames } from '@cantoo/pdf-lib'
import type { SheetMark, Told } from '../marks/setting.ts'
import type { SheetPage } from '../pages/layout.ts'

/** Operators that belong to one part of the page; null: to none. */
export interface ToldOperators {
  readonly told: Told | null
  readonly operators: readonly Operator[]
}

/** What each mark of a page is part of: on a page with pieces, all that says nothing else is the drawing of them. */
export function toldOn({ placed, says }: SheetPage): (mark: SheetMark) => Told | null {
  const drawing: Told = { as: 'Figure', alt: says, isLast: true }
  return (mark) => {
    if (mark.told) return mark.told
    if (mark.mark === 'path' && mark.picture) return { as: 'Figure', alt: mark.picture.says }
    if (placed.length > 0) return drawing
    return mark.mark === 'word' ? { as: 'P' } : null
  }
}

export interface Tags {
  /** The same operators between their marks. */
  marked(page: PDFPage, list: readonly ToldOperators[]): Operator[]
  /** Writes the tree, once all pages are marked. */
  finish(): void
}

/** A tree of structure for a PDF: a document, and on each page one part after another. */
export function tagsFor(pdf: PDFDocument): Tags {
  const { context, catalog } = pdf
  const root = context.nextRef()
  const whole = context.nextRef()
  const all: PDFRef[] = []
  const byPage: PDFRef[][] = []
  return {
    marked(page, list) {
      const parts = new Map<Told, { readonly ref: PDFRef; readonly holds: number[] }>()
      const holders: PDFRef[] = []
      const operators: Operator[] = []
      let before: Told | null | undefined
      for (const { told, operators: own } of list) {
        if (own.length === 0) continue
        if (told !== before || before === undefined) {
          if (before !== undefined) operators.push(end())
          operators.push(told && told.as !== 'Artifact' ? begin(told) : artifact())
          before = told
        }
        operators.push(...own)
      }
      if (before !== undefined) operators.push(end())
      page.node.set(PDFName.of('StructParents'), context.obj(byPage.length))
      page.node.set(PDFName.of('Tabs'), PDFName.of('S'))
      byPage.push(holders)
      const entries = [...parts]
      const inOrder = [
        ...entries.filter(([told]) => !told.isLast),
        ...entries.filter(([told]) => told.isLast),
      ]
      for (const [told, { ref, holds }] of inOrder) {
        all.push(ref)
        context.assign(
          ref,
          context.obj({
            ...{ Type: 'StructElem', S: told.as, P: whole, Pg: page.ref, K: holds },
            ...(told.alt === undefined ? {} : { Alt: PDFHexString.fromText(told.alt) }),
          }),
        )
      }
      return operators

      function begin(told: Told): Operator {
        const part = parts.get(told) ?? { ref: context.nextRef(), holds: [] }
        parts.set(told, part)
        part.holds.push(holders.length)
        const sequence = `<</MCID ${holders.length}>>`
        holders.push(part.ref)
        return PDFOperator.of(PDFOperatorNames.BeginMarkedContentSequence, [PDFName.of(told.as), sequence])
      }
    },
    finish() {
      context.assign(whole, context.obj({ Type: 'StructElem', S: 'Document', P: root, K: all }))
      context.assign(
        root,
        context.obj({
          ...{ Type: 'StructTreeRoot', K: [whole], ParentTreeNextKey: byPage.length },
          ParentTree: context.register(context.obj({ Nums: byPage.flatMap((holders, k) => [k, holders]) })),
        }),
      )
      catalog.set(PDFName.of('StructTreeRoot'), root)
      catalog.set(PDFName.of('MarkInfo'), context.obj({ Marked: true }))
    },
  }
}

const artifact = (): Operator => PDFOperator.of(PDFOperatorNames.BeginMarkedContent, [PDFName.of('Artifact')])

const end = (): Operator => PDFOperator.of(PDFOperatorNames.EndMarkedContent)
