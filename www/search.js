// What the other thread does: it answers each question of the page with what the search found.

// Where it cannot be done there, the page does it by itself.
export function answer(isReady, search) {
  self.onmessage = async ({ data }) => {
    let found = null;
    try {
      await isReady;
      found = search(...data) ?? null;
    } catch (error) {
      console.warn('no search beside the page:', error);
    }
    self.postMessage(found);
  };
}
