// Brings what the page needs later. The page asks on the window and is told there:
//   notchwright:need-NAME    it is wanted
//   notchwright:NAME-came    its functions can be called
//   notchwright:NAME-failed  it could not be had; it may be asked for again

const CHUNKS = ['sled', 'dovetail', 'shop', 'parts', 'jobs'];

// Whatever comes later looks as 'later.css' says, which comes with the first of it.
let dressed;

function dress() {
  dressed ??= new Promise((done, fail) => {
    const link = document.createElement('link');
    link.rel = 'stylesheet';
    link.href = new URL('./later.css', import.meta.url).href;
    link.onload = done;
    link.onerror = () => {
      link.remove();
      dressed = undefined;
      fail(new Error('later.css did not come'));
    };
    document.head.append(link);
  });
  return dressed;
}

// The page exports all that a chunk imports; starting it puts its functions into the page's table.
async function start(name, page) {
  const address = new URL(`./pkg/${name}.wasm`, import.meta.url);
  const [program] = await Promise.all([fetch(address), dress()]);
  await WebAssembly.instantiateStreaming(program, { page });
}

async function bring(name, page) {
  let outcome = 'came';
  try {
    await start(name, page);
  } catch (error) {
    console.warn(`${name} did not come:`, error);
    outcome = 'failed';
  }
  window.dispatchEvent(new CustomEvent(`notchwright:${name}-${outcome}`));
}

export function bringChunks(page) {
  for (const name of CHUNKS) {
    window.addEventListener(`notchwright:need-${name}`, () => bring(name, page));
  }
}
