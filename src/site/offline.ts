/** The place in which a page says that the book is kept on the device. */
export const OFFLINE_PLACE = 'offline-says'

/** Later than anything a reader waits for, ms. */
const LATER = 6000

/**
 * Runs when all else is done: has the whole book kept on the device, where the browser can and the reader does not save
 * data. What fails is tried again with the next page.
 */
export const AT_LAST = `(() => {
  const worker = navigator.serviceWorker
  if (!worker || navigator.connection?.saveData) return
  const say = (text) => {
    const place = document.getElementById('${OFFLINE_PLACE}')
    if (place) place.textContent = text
  }
  worker.addEventListener('message', ({ data }) => {
    if (data.failed) say('')
    else if (data.kept < data.of) say('Being kept on this device: ' + data.kept + ' of ' + data.of + ' files.')
    else say('Kept on this device: it works without a network.')
  })
  addEventListener('load', () =>
    setTimeout(async () => {
      try {
        await worker.register('/worker.js')
        const { active } = await worker.ready
        active.postMessage('keep')
      } catch {}
    }, ${LATER}),
  )
})()`
