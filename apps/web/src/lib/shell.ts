/** The worker that keeps the app itself on the device: registered by the built page only. */
export async function keepShell(isOutboxEmpty: () => Promise<boolean>): Promise<void> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  const registration = await navigator.serviceWorker.register('/sw.js', { updateViaCache: 'none' });
  const takeOver = async () => {
    // What was recorded by this version is sent by this version.
    if (registration.waiting !== null && registration.active !== null && (await isOutboxEmpty())) registration.waiting.postMessage('takeOver');
  };
  await takeOver();
  // While nobody looks, so that no page changes under a thumb; the new version serves the next opening.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void takeOver();
    else void registration.update().catch(() => undefined);
  });
}
