// Brings what the page needs later. The page asks on the window and is told there:
//   notchwright:need-NAME    it is wanted
//   notchwright:NAME-came    its functions can be called
//   notchwright:NAME-failed  it could not be had; it may be asked for again

const CHUNKS = ['sled', 'dovetail', 'shop', 'parts', 'jobs'];

// The page exports all that a chunk imports; starting it puts its functions into the page's table.
async function start(name, page) {
  const address = new URL(`./pkg/${name}.wasm`, import.meta.url);
  await WebAssembly.instantiateStreaming(fetch(address), { page });
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
