/** What is told to who opens a page as a file of a disk: there a browser gives pages no script and no files to fetch. */
const SAYS =
  'You have opened this page from a folder. You can read all of the book here and print its sheets. To drag, play and search, a grown-up opens a terminal in the folder, types <code>python3 -m http.server 8000</code>, and goes to localhost:8000 in the browser.'

/** Runs at the end of a page: on a disk an address that names a folder leads to no page, so links name the page in it. */
export const FROM_FOLDER = `if(location.protocol==='file:'){for(const a of document.links)if(a.protocol==='file:')a.pathname=a.pathname.replace(/\\/$/,'/index.html');document.getElementById('page').insertAdjacentHTML('afterbegin','<div class="cell"><div class="in-margin"></div><p class="on-page" role="note">${SAYS}</p></div>')}`
