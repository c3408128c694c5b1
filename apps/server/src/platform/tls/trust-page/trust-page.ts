import { createHash } from 'node:crypto';
import { directionOf, LANGUAGES, type Language } from '@seatwell/contract';
import type { TrustedAuthority } from '../tls-source.ts';
import ar from './texts/ar.json' with { type: 'json' };
import en from './texts/en.json' with { type: 'json' };
import es from './texts/es.json' with { type: 'json' };
import hi from './texts/hi.json' with { type: 'json' };
import pt from './texts/pt.json' with { type: 'json' };

type Texts = typeof en;

/** A language of ours without its page does not compile. */
const CATALOGUES: Readonly<Record<Language, Texts>> = { en, es, pt, hi, ar };

export const TRUST_PAGE = '/trust';
export const AUTHORITY_FILE = '/seatwell-authority.crt';

/** One answer of the page or the file, the same on the https port and on the redirecting one. */
export interface TrustAnswer {
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Buffer;
}

const STYLE = `
body{font:1.125rem/1.5 system-ui,sans-serif;max-width:42rem;margin:0 auto;padding:1rem;color:#111;background:#fff}
code{display:block;font-size:1.125rem;overflow-wrap:anywhere;padding:.75rem;border:2px solid #111}
a.get{display:inline-block;padding:.875rem 1.25rem;background:#0b3d5c;color:#fff;border-radius:.25rem}
li{margin:.375rem 0}`;
const STYLE_HASH = createHash('sha256').update(STYLE).digest('base64');

const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[sign] ?? sign);

/** The first language of ours that the browser asks for; nobody has signed in yet. */
function languageFor(acceptLanguage: string | undefined): Language {
  const wishes = (acceptLanguage ?? '').split(',').map((wish) => wish.trim().slice(0, 2).toLowerCase());
  return wishes.flatMap((wish) => LANGUAGES.filter((each) => each === wish))[0] ?? 'en';
}

/** How to trust the authority on each kind of device, with its fingerprint. @param app address of Seatwell itself */
export function trustPage(
  { fingerprint }: TrustedAuthority,
  app: string,
  acceptLanguage: string | undefined,
): TrustAnswer {
  const language = languageFor(acceptLanguage);
  const texts = CATALOGUES[language];
  const devices = texts.devices
    .map(({ name, steps }) => {
      const items = steps.map((step) => `<li>${escaped(step)}</li>`).join('');
      return `<h2>${escaped(name)}</h2><ol>${items}</ol>`;
    })
    .join('');
  const paragraph = (text: string) => `<p>${escaped(text)}</p>`;
  const page = `<!doctype html><html lang="${language}" dir="${directionOf(language)}"><meta charset="utf-8">
<meta name="viewport" content="width=device-width,initial-scale=1"><title>${escaped(texts.title)}</title>
<style>${STYLE}</style><main><h1>${escaped(texts.title)}</h1>${paragraph(texts.why)}${paragraph(texts.check)}
<code dir="ltr">${escaped(fingerprint)}</code>
<p><a class="get" href="${AUTHORITY_FILE}" download>${escaped(texts.download)}</a></p>${paragraph(texts.limits)}
${devices}<p><a href="${escaped(app)}">${escaped(texts.goOn)}</a></p>${paragraph(texts.remove)}</main></html>`;
  return {
    headers: {
      'content-type': 'text/html; charset=utf-8',
      'cache-control': 'no-store',
      'content-security-policy': `default-src 'none'; style-src 'sha256-${STYLE_HASH}'; frame-ancestors 'none'; base-uri 'none'`,
      'x-content-type-options': 'nosniff',
    },
    body: Buffer.from(page),
  };
}

/** The authority's certificate alone, public, in the form that devices install. */
export function authorityFile({ der }: TrustedAuthority): TrustAnswer {
  return {
    headers: {
      'content-type': 'application/x-x509-ca-cert',
      'content-disposition': 'attachment; filename="seatwell-authority.crt"',
      'cache-control': 'no-store',
      'x-content-type-options': 'nosniff',
    },
    body: der,
  };
}
