// The site's new versions. The service worker keeps serving the version this
// device uses until a person asks for the newer one; the one-file page has none.

const worker = () => navigator.serviceWorker?.controller;

/** Calls `ready` once a newer version lies on this device. */
export async function offerNewVersion(ready) {
  if (!document.querySelector('link[rel=manifest]') || !('serviceWorker' in navigator)) return;
  navigator.serviceWorker.addEventListener('message', ({ data }) => {
    if (data === 'newer') ready();
    if (data === 'taken') location.reload();
  });
  await navigator.serviceWorker.register('service-worker.js', { updateViaCache: 'none' });
  await navigator.serviceWorker.ready;
  worker()?.postMessage('any newer?');
}

/** Changes over to the newer version; the page starts again when the worker has done so. */
export const takeNewVersion = () => worker()?.postMessage('take');
