import { directionOf, LANGUAGES } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { trustPage } from './trust-page.ts';

const authority = { fingerprint: 'AB:CD:EF', der: Buffer.from('certificate') } as Parameters<typeof trustPage>[0];
const page = (asked: string | undefined) => trustPage(authority, '/', asked).body.toString();
const shape = (html: string) => html.replaceAll(/>[^<]*/g, '>').replaceAll(/ (lang|dir)="[a-z]*"/g, '');

describe('the page that tells how to trust the authority', () => {
  test.each(LANGUAGES)(
    'is in %s where the browser asks for it, with every device, step and the fingerprint',
    (language) => {
      const html = page(`xx, ${language}-ZZ;q=0.9, en;q=0.1`);
      expect(html).toContain(`<html lang="${language}" dir="${directionOf(language)}">`);
      expect(html).toContain('<code dir="ltr">AB:CD:EF</code>');
      expect(shape(html)).toBe(shape(page('en')));
      if (language !== 'en') expect(html).not.toContain('Trust this server');
    },
  );

  test.each([undefined, '', 'tlh'])('is English where the browser asks for %s', (asked) => {
    expect(page(asked)).toContain('Trust this server');
  });
});
