/**
 * Lets a page open with the network gone: its own files are kept by the browser. What it shows still
 * comes from the board, or is told as old. Needs https, or the board's own machine.
 *
 * @param page its path, for example `/station`; the rooms of stations share one
 */
export function keepOwnFiles(page: '/pocket' | '/station' | '/holding'): void {
  if ('serviceWorker' in navigator) {
    // Without it the page works too, as long as the server is there.
    navigator.serviceWorker.register('/page-worker.js', { scope: page }).catch(() => undefined);
  }
  // Asks the browser not to clear what is kept when the disk is full; it may say no.
  navigator.storage?.persist?.().catch(() => undefined);
}
