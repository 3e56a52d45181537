// Runs where a page is opened as a file of a disk: there a browser gives pages no modules and nothing to fetch, and an
// address that names a folder leads to no page. So links name the page in their folder, and what is missing is said.
for (const link of document.links)
  if (link.protocol === 'file:') link.pathname = link.pathname.replace(/\/$/, '/index.html')

const SAYS =
  'You have opened this page from a folder. You can read all of the book here and print its sheets. To drag, play and search, a grown-up opens a terminal in the folder, types <code>python3 -m http.server 8000</code>, and goes to localhost:8000 in the browser.'

document
  .getElementById('page')
  .insertAdjacentHTML(
    'afterbegin',
    `<div class="cell"><div class="in-margin"></div><p class="on-page" role="note">${SAYS}</p></div>`,
  )
