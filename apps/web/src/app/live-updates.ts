/** What the server says when a stream has grown. */
export interface Head {
  readonly version: number;
  readonly root?: string;
  readonly jointIds?: readonly string[];
}

const reopenAfter_ms = [1_000, 3_000, 10_000, 30_000];

/**
 * Listens to a shutdown's heads: one stream for all tabs of the browser. The tab that holds the lock has the
 * stream and passes heads on; when it closes, another takes over. Where the browser has no locks (plain http on
 * a network), each tab has its own stream.
 * @returns a function that stops listening
 */
export function listenToHeads(shutdownId: string, onHead: (head: Head) => void): () => void {
  const name = `seatwell.live.${shutdownId}`;
  const stop = new AbortController();
  const channel = new BroadcastChannel(name);
  channel.onmessage = (event: MessageEvent<Head>) => onHead(event.data);
  const passOn = (head: Head) => {
    onHead(head);
    channel.postMessage(head);
  };
  if (navigator.locks) {
    navigator.locks
      .request(name, { signal: stop.signal }, () => streamUntil(stop.signal, shutdownId, passOn))
      .catch(() => undefined);
  } else {
    void streamUntil(stop.signal, shutdownId, onHead);
  }
  return () => {
    stop.abort();
    channel.close();
  };
}

function streamUntil(signal: AbortSignal, shutdownId: string, onHead: (head: Head) => void): Promise<void> {
  return new Promise((resolve) => {
    let source: EventSource | undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let failures = 0;
    const open = () => {
      source = new EventSource(`/api/v1/shutdowns/${shutdownId}/live`);
      source.addEventListener('open', () => {
        failures = 0;
      });
      source.addEventListener('head', (event) => onHead(JSON.parse(event.data) as Head));
      source.addEventListener('error', () => {
        // A broken line is reopened by the browser; a refusal closes the stream, and we try again later.
        if (source?.readyState !== EventSource.CLOSED) return;
        timer = setTimeout(open, reopenAfter_ms[Math.min(failures++, reopenAfter_ms.length - 1)]);
      });
    };
    signal.addEventListener('abort', () => {
      clearTimeout(timer);
      source?.close();
      resolve();
    });
    open();
  });
}
