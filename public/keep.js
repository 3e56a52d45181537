// Has the whole book kept on the device, where the browser can and the reader does not save data; loaded when all else
// is done. What fails is tried again with the next page.
const place = document.getElementById('offline-says')

const say = (text) => {
  if (place) place.textContent = text
}

const { serviceWorker, connection } = navigator

if (serviceWorker && !connection?.saveData) {
  serviceWorker.addEventListener('message', ({ data }) => {
    const words = place?.dataset
    if (data.failed || !words) say('')
    else if (data.kept < data.of)
      say(words.beingKept.replace('{kept}', data.kept).replace('{of}', data.of))
    else say(words.isKept)
  })
  try {
    await serviceWorker.register(new URL('worker.js', import.meta.url))
    const { active } = await serviceWorker.ready
    active.postMessage('keep')
  } catch {
    // A browser may forbid it; the book works all the same while there is a network.
  }
}
