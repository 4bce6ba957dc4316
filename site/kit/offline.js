// An installed page is kept by its service worker. Where the page was opened
// from a file, or over plain http, there is none.

/**
 * @param {(take: () => void) => void} ready is told when a new version lies ready, and how to take it
 */
export async function keepOffline(ready) {
  if (!document.querySelector('link[rel=manifest]') || !('serviceWorker' in navigator)) return;
  const kept = await navigator.serviceWorker.register('keep.js', { updateViaCache: 'none' });
  const take = () => {
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload());
    kept.waiting?.postMessage('take over');
  };
  const look = () => kept.waiting && navigator.serviceWorker.controller && ready(take);
  look();
  kept.addEventListener('updatefound', () => kept.installing?.addEventListener('statechange', look));
  // A page that stays open for days is told too.
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && void kept.update().catch(() => {}));
}
