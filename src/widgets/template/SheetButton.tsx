import './template.css'
import type { ComponentType, JSX } from 'preact'
import { useRef, useState } from 'preact/hooks'
import * as says from '../../../content/words/template/button.ts'
import type { Design } from '../../paper/index.ts'
import { notLoaded } from '../model/loading.ts'
import { templateButton } from './template-button.ts'

interface SheetButtonProps {
  readonly slug: string
  /** The design as it is now. */
  readonly design: () => Design
  /** What the file is called, where that is not the slug. */
  readonly fileName?: string
  /** What the button says; the template of a chapter if left out. */
  readonly label?: string
}

type Dialog = ComponentType<SheetButtonProps & { readonly onClose: () => void }>

/** The template of the state on the screen, at true size. What makes it is loaded when it is asked for. */
export function SheetButton(props: SheetButtonProps): JSX.Element {
  const { slug, label = says.printTemplate } = props
  const button = useRef<HTMLButtonElement>(null)
  const [Dialog, setDialog] = useState<{ readonly it: Dialog } | null>(null)
  const [said, setSaid] = useState('')
  const open = async () => {
    try {
      const { SheetDialog } = await import('./SheetDialog.tsx')
      setSaid('')
      setDialog({ it: SheetDialog })
    } catch (error) {
      setSaid(notLoaded(says.theTemplate, error))
    }
  }
  const close = () => {
    setDialog(null)
    button.current?.focus()
  }
  return (
    <>
      <button id={templateButton(slug)} ref={button} type="button" class="button primary" onClick={open}>
        {label}
      </button>
      {said === '' ? null : (
        <span class="trouble" role="alert">
          {said}
        </span>
      )}
      {Dialog ? <Dialog.it {...props} onClose={close} /> : null}
    </>
  )
}
