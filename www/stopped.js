// What is shown when the program cannot start, or has stopped. A dead page must not look alive, and
// nothing that was typed may be lost: it is in the browser's store, and can be saved from there.

const STATE = 'notchwright.state';
const ASIDE = 'notchwright.aside.';

// A store may be forbidden: then there is nothing in it.
function store() {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}

function saved() {
  return store()?.getItem(STATE) ?? null;
}

function save() {
  const url = URL.createObjectURL(new Blob([saved()], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = 'notchwright.json';
  link.click();
  URL.revokeObjectURL(url);
}

function freeKey() {
  const numbers = Object.keys(store())
    .filter((key) => key.startsWith(ASIDE))
    .map((key) => Number(key.slice(ASIDE.length)) || 0);
  return ASIDE + (Math.max(0, ...numbers) + 1);
}

// What may stop the program at every start is kept where it does not read it by itself.
function startAfresh() {
  const text = saved();
  if (text !== null) {
    const key = freeKey();
    // There may be no room for it twice.
    store().removeItem(STATE);
    store().setItem(key, text);
  }
  location.replace(location.pathname + location.search);
}

function element(kind, words) {
  const made = document.createElement(kind);
  made.textContent = words;
  return made;
}

function button(words, act) {
  const made = element('button', words);
  made.type = 'button';
  made.className = 'button';
  made.addEventListener('click', act);
  return made;
}

// A newer copy may wait for a consent that the program can no longer ask for. Who brings it reloads the page.
function loadAgain() {
  const ask = new Event('notchwright:use-update', { cancelable: true });
  if (window.dispatchEvent(ask)) location.reload();
}

function offers() {
  const kept = saved() !== null;
  const row = document.createElement('div');
  row.className = 'buttons';
  row.append(button('Load the page again', loadAgain));
  if (kept) row.append(button('Save everything as a file', save));
  if (kept || location.hash) row.append(button('Start afresh, and keep this aside', startAfresh));
  return row;
}

function comfort() {
  if (saved() !== null) return 'Whatever you had typed is still stored on this device.';
  if (location.hash) return 'The address of this page carries the job: bookmark it before you leave.';
  return 'Nothing was stored on this device.';
}

export function sayStopped(title, advice) {
  const page = document.createElement('main');
  page.id = 'trouble';
  const said = document.createElement('div');
  said.setAttribute('role', 'alert');
  said.append(element('h1', title), element('p', `${advice} ${comfort()}`));
  page.append(said, offers());
  // A new element: the old one still listens.
  const app = document.createElement('div');
  app.id = 'app';
  app.append(page);
  document.getElementById('app').replaceWith(app);
}

function stop() {
  sayStopped('Notchwright has stopped', 'That is a fault of the program, not of your numbers.');
}

// Events and timers of the program still come to its fence, which turns them away. What went wrong has been
// said once.
function ignoreTurnedAway(event) {
  if ((event.error ?? event.reason)?.name === 'Stopped') event.preventDefault();
}

export function watchForTraps() {
  window.addEventListener('notchwright:stopped', stop);
  window.addEventListener('error', ignoreTurnedAway);
  window.addEventListener('unhandledrejection', ignoreTurnedAway);
}
