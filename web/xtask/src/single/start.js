// Starts the page that is one file: everything that it needs is in it, so that every part of the program
// has come as soon as it is asked for.

const CHUNKS = ['__CHUNKS__'];

function bringChunks() {
  for (const name of CHUNKS) {
    window.addEventListener(`notchwright:need-${name}`, () => {
      window.dispatchEvent(new CustomEvent(`notchwright:${name}-came`));
    });
  }
}

// The module is packed and written in letters: a page can hold nothing else.
async function unpack(written) {
  const letters = atob(written);
  const packed = Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream('gzip'));
  return new Response(stream).arrayBuffer();
}

// Another thread runs this script too. It cannot read the page, so it is given the module with it.
function offerSearcher(written) {
  const script = document.querySelector('script[type=module]').textContent;
  const parts = [`const MODULE = '${written}';`, script];
  const address = URL.createObjectURL(new Blob(parts, { type: 'text/javascript' }));
  document.documentElement.dataset.searcher = address;
}

async function start() {
  watchForTraps();
  if (typeof WebAssembly !== 'object' || typeof DecompressionStream !== 'function') {
    sayStopped('This browser is too old', 'It cannot unpack the program: please update it.');
    return;
  }
  try {
    const written = document.getElementById('module').textContent;
    await __wbg_init({ module_or_path: await unpack(written) });
    offerSearcher(written);
    bringChunks();
    startPage();
  } catch (error) {
    console.error(error);
    sayStopped('Notchwright could not start', 'Please load the page again.');
  }
}

async function startSearch() {
  await __wbg_init({ module_or_path: await unpack(MODULE) });
}

if (typeof document === 'object') {
  start();
} else {
  answer(startSearch(), searchSheets);
}
