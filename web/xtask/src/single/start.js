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
async function unpack() {
  const letters = atob(document.getElementById('module').textContent);
  const packed = Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream('gzip'));
  return new Response(stream).arrayBuffer();
}

async function start() {
  watchForTraps();
  if (typeof WebAssembly !== 'object' || typeof DecompressionStream !== 'function') {
    sayStopped('This browser is too old', 'It cannot unpack the program: please update it.');
    return;
  }
  try {
    await __wbg_init({ module_or_path: await unpack() });
    bringChunks();
    startPage();
  } catch (error) {
    console.error(error);
    sayStopped('Notchwright could not start', 'Please load the page again.');
  }
}

start();
