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

// What several chunks need comes before the first of them.
let common;

function bringCommon(page) {
  common ??= instance('common', { page }).catch((error) => {
    common = undefined;
    throw error;
  });
  return common;
}

function program(name) {
  return fetch(new URL(`./pkg/${name}.wasm`, import.meta.url));
}

async function instance(name, imports) {
  const { instance } = await WebAssembly.instantiateStreaming(program(name), imports);
  return instance.exports;
}

// What has come exports all that a chunk imports; starting it puts its functions into the page's table.
export async function start(name, page) {
  const compiled = WebAssembly.compileStreaming(program(name));
  const [common, module] = await Promise.all([bringCommon(page), compiled]);
  await WebAssembly.instantiate(module, { page, common });
}

async function bring(name, page) {
  let outcome = 'came';
  try {
    await Promise.all([start(name, page), dress()]);
  } catch (error) {
    console.warn(`${name} did not come:`, error);
    outcome = 'failed';
  }
  window.dispatchEvent(new CustomEvent(`notchwright:${name}-${outcome}`));
}

// Whether a newer copy has taken over, for the sake of another tab: its parts are not of this program.
let isFormer = false;

function watchCopy() {
  // Absent where nothing is kept.
  const worker = navigator.serviceWorker;
  let isKept = Boolean(worker?.controller);
  worker?.addEventListener('controllerchange', () => {
    isFormer ||= isKept;
    isKept = true;
  });
}

export function bringChunks(page) {
  watchCopy();
  for (const name of CHUNKS) {
    // What was typed, and where one was going, is stored before the page is loaded anew.
    const asked = () => (isFormer ? location.reload() : bring(name, page));
    window.addEventListener(`notchwright:need-${name}`, asked);
  }
}
