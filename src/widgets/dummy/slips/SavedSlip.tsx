import type { ComponentChildren, JSX } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import * as modelSays from '../../../../content/words/dummy/model.ts'
import * as says from '../../../../content/words/dummy/saved.ts'
import { CutterTools } from '../../exports/CutterTools.tsx'
import { TakeElsewhere } from '../../exports/TakeElsewhere.tsx'
import { chooseFile, readFile, saveFile } from '../../keeping/file.ts'
import { fileName } from '../../keeping/file-text.ts'
import { fitsQr, linkText } from '../../keeping/link.ts'
import type { Entry } from '../../keeping/shelf.ts'
import { notLoaded } from '../../model/loading.ts'
import { placed } from '../../model/place.ts'
import type { Dummy } from '../model/dummy-model.ts'
import type { Work } from '../model/work.ts'
import { Slip } from './Slip.tsx'

interface SavedProps {
  readonly dummy: Dummy
  readonly work: Work
}

const when = (time: number): string =>
  new Date(time).toLocaleString('en', { dateStyle: 'medium', timeStyle: 'short' })

const Act = ({
  onPress,
  children,
}: {
  readonly onPress: () => void
  readonly children: ComponentChildren
}): JSX.Element => (
  <button type="button" class="link" onClick={onPress}>
    {children}
  </button>
)

/** One dummy on the shelf: its picture opens it. */
function Shelved({ dummy, work, entry }: SavedProps & { readonly entry: Entry }): JSX.Element {
  const { id, name, changed, picture } = entry
  const here = work.id() === id
  const open = async () => {
    await work.open(id)
    dummy.told.value = modelSays.onTable(name)
  }
  return (
    <li class="shelved" data-here={here}>
      <button type="button" class="offer" onClick={open} aria-current={here ? 'true' : undefined}>
        {picture === null ? (
          <span class="shelved-blank" />
        ) : (
          // Drawn by this page when it was kept: it takes its colours from the page, by day and by night.
          <span class="shelved-picture" dangerouslySetInnerHTML={{ __html: picture }} />
        )}
        <strong>{name}</strong>
        <span>{here ? says.onTable : when(changed)}</span>
      </button>
      <span class="shelved-acts">
        <Act onPress={() => void work.duplicate(id)}>{says.copy}</Act>
        <Act onPress={() => void work.remove(id)}>{says.remove}</Act>
      </span>
    </li>
  )
}

/** The dummy as a link, and as a code for a phone where the link is short enough. */
function Send({ dummy }: { readonly dummy: Dummy }): JSX.Element {
  const design = dummy.bench.design.value
  const [link, setLink] = useState<string | null>(null)
  const [said, setSaid] = useState('')
  const [code, setCode] = useState<string | null>(null)
  useEffect(() => {
    setLink(null)
    setCode(null)
    setSaid('')
  }, [design])
  const made = async (): Promise<string | null> => {
    // A link of a page from a disk leads to a file there: what can be sent is said instead.
    if (location.protocol === 'file:') {
      setSaid(says.noLinkOnDisk)
      return null
    }
    const text = await linkText(design)
    const whole = text === null ? null : `${location.origin}${location.pathname}#${text}`
    setLink(whole)
    if (whole === null) setSaid(says.tooLargeForLink)
    return whole
  }
  const copy = async () => {
    const whole = await made()
    if (whole === null) return
    try {
      await navigator.clipboard.writeText(whole)
      setSaid(says.linkCopied)
    } catch {
      setSaid(says.copyThis)
    }
  }
  const show = async () => {
    const whole = await made()
    if (whole === null) return
    if (!fitsQr(whole)) return setSaid(says.tooLargeForCode)
    try {
      const { qrSvg } = await import('../../keeping/qr.ts')
      setCode(qrSvg(whole, says.codeOpens(design.title)))
    } catch (error) {
      setSaid(notLoaded(says.code, error))
    }
  }
  return (
    <>
      <div class="slip-buttons">
        <button type="button" class="button" onClick={copy}>
          {says.copyLink}
        </button>
        <button type="button" class="button" onClick={show}>
          {says.phoneCode}
        </button>
      </div>
      <p class="slip-says" role="status">
        {said}
      </p>
      {said === says.copyThis && link !== null ? (
        <input
          class="link-text"
          readOnly
          aria-label={says.linkLabel}
          value={link}
          onFocus={({ currentTarget }) => currentTarget.select()}
        />
      ) : null}
      {code === null ? null : (
        // The code is our own drawing: rows of dark squares, and a name that was made safe.
        <div class="qr" dangerouslySetInnerHTML={{ __html: code }} />
      )}
    </>
  )
}

/** To the steps of the card as it stands, or to a lesson about it. What is on the table is kept meanwhile. */
function StepsWay({ dummy }: { readonly dummy: Dummy }): JSX.Element {
  const [trouble, setTrouble] = useState('')
  const go = async (to: '/steps/' | '/class/') => {
    const link = await linkText(dummy.bench.design.peek())
    if (link === null) setTrouble(says.cardTooLarge)
    else location.assign(`${placed(to)}#${link}`)
  }
  return (
    <>
      <div class="slip-buttons">
        <button type="button" class="button" onClick={() => void go('/steps/')}>
          {says.makeIt}
        </button>
        <button type="button" class="button" onClick={() => void go('/class/')}>
          {says.lesson}
        </button>
      </div>
      {trouble === '' ? null : (
        <p class="trouble" role="alert">
          {trouble}
        </p>
      )}
    </>
  )
}

/** What was deleted a moment ago, and the way back. */
function Gone({ work }: { readonly work: Work }): JSX.Element {
  const entry = work.gone.value
  const told = useRef<HTMLParagraphElement>(null)
  const id = entry?.id
  // It was deleted farther down, where this would not be seen.
  useEffect(() => {
    if (id !== undefined) told.current?.scrollIntoView({ block: 'nearest' })
  }, [id])
  const bringBack = async (id: string) => {
    await work.restore(id)
    await work.open(id)
  }
  return (
    <p class="slip-gone" role="status" ref={told}>
      {entry === null ? null : (
        <>
          {says.isDeleted(entry.name)} {work.entries.value?.length === 0 ? `${says.emptyInstead} ` : ''}
          <Act onPress={() => void bringBack(entry.id)}>{says.bringBack}</Act>
        </>
      )}
    </p>
  )
}

/** Where the work is kept, and the ways out of and into this page. */
export function SavedSlip({ dummy, work }: SavedProps): JSX.Element {
  useEffect(() => void work.look(), [work])
  const entries = work.entries.value
  const deleted = work.deleted.value
  const earlier = work.earlier.value
  const [keptAs, setKeptAs] = useState('')
  const keepFile = () => {
    const design = dummy.bench.design.peek()
    saveFile(design)
    setKeptAs(says.fileKept(fileName(design.title)))
  }
  const openFile = async () => {
    setKeptAs('')
    const file = await chooseFile()
    if (file) await work.take(await readFile(file))
  }
  return (
    <Slip dummy={dummy} title={says.title}>
      {work.trouble.value === '' ? null : (
        <p class="trouble" role="alert">
          {work.trouble.value}
        </p>
      )}
      <Gone work={work} />
      <p class="slip-says">{says.keptAsYouGo}</p>
      <div class="slip-buttons">
        <button type="button" class="button" onClick={keepFile}>
          {says.keepFile}
        </button>
        <button type="button" class="button" onClick={openFile}>
          {says.openFile}
        </button>
        <button type="button" class="button" onClick={() => void work.beginEmpty()}>
          {says.newDummy}
        </button>
      </div>
      <p class="slip-says file-kept" role="status">
        {keptAs}
      </p>
      <Send dummy={dummy} />
      <StepsWay dummy={dummy} />
      <h3>{says.yourDummies}</h3>
      {entries === null ? (
        <p class="slip-says">{says.looking}</p>
      ) : entries.length === 0 ? (
        <p class="slip-says">{says.noneYet}</p>
      ) : (
        <ul class="shelf">
          {entries.map((entry) => (
            <Shelved key={entry.id} {...{ dummy, work, entry }} />
          ))}
        </ul>
      )}
      <TakeElsewhere now={() => dummy.bench.state.peek()} />
      <CutterTools now={() => dummy.bench.state.peek()} />
      {deleted.length === 0 ? null : (
        <details>
          <summary>{says.deleted}</summary>
          <ul class="plain">
            {deleted.map(({ id, name }) => (
              <li key={id}>
                {name} <Act onPress={() => void work.restore(id)}>{says.bringBack}</Act>
              </li>
            ))}
          </ul>
        </details>
      )}
      {earlier.length === 0 ? null : (
        <details>
          <summary>{says.before}</summary>
          <ul class="plain">
            {earlier.slice(0, 12).map((state) => (
              <li key={state.when}>
                {when(state.when)}{' '}
                <Act onPress={() => dummy.put(state.design, says.asBefore)}>{says.putBackSo}</Act>
              </li>
            ))}
          </ul>
        </details>
      )}
    </Slip>
  )
}
