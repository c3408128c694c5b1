/** Lets the app start, and show what was read, without signal. Browsers allow it on secure addresses only. */
export function registerServiceWorker(): void {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  window.addEventListener('load', () => {
    navigator.serviceWorker.register('/service-worker.js').catch(() => {
      // Without it everything works as long as there is a connection.
    });
  });
}
