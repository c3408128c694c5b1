import { useEffect } from 'react';

/** Keeps the screen on while tightening, where the device can. */
export function useWakeLock(wanted: boolean): void {
  useEffect(() => {
    if (!wanted || !('wakeLock' in navigator)) return;
    let lock: WakeLockSentinel | undefined;
    let stopped = false;
    const ask = async () => {
      if (document.visibilityState !== 'visible') return;
      try {
        const given = await navigator.wakeLock.request('screen');
        if (stopped) void given.release();
        else lock = given;
      } catch {
        // The device refuses (low battery): the screen then goes off as usual.
      }
    };
    // A lock ends when the page is hidden.
    document.addEventListener('visibilitychange', ask);
    void ask();
    return () => {
      stopped = true;
      document.removeEventListener('visibilitychange', ask);
      void lock?.release();
    };
  }, [wanted]);
}
