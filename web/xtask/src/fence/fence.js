
// The fence around the compiled module. What an exception has left half done stays so: borrowed values stay
// borrowed, and the stack is not wound back. From then on nothing gets in, and what is still inside, further out,
// ends at its next step outside. A page is told by notchwright:stopped on the window.

let isShut = false;

function turnAway() {
  if (!isShut) return;
  const error = new Error('The program has stopped');
  error.name = 'Stopped';
  throw error;
}

function shut() {
  if (isShut) return;
  isShut = true;
  globalThis.dispatchEvent?.(new Event('notchwright:stopped'));
}

function wayIn(inner) {
  return (...given) => {
    turnAway();
    try {
      return inner(...given);
    } catch (error) {
      shut();
      throw error;
    }
  };
}

function wayOut(outer) {
  return (...given) => {
    turnAway();
    return outer(...given);
  };
}

function fenced(items, way) {
  const ways = Object.entries(items).map(([name, it]) => [name, typeof it === 'function' ? way(it) : it]);
  return { __proto__: null, ...Object.fromEntries(ways) };
}
