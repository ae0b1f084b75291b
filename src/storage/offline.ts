/**
 * Keeps the app itself on the device, so that it opens without signal. Where the browser knows no service workers, or
 * refuses one, the app works as before while there is a network.
 */
export async function keepForOffline(): Promise<void> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return
  try {
    await navigator.serviceWorker.register('./sw.js')
  } catch {
    // Private windows refuse; nothing is lost but the use without signal.
  }
}
