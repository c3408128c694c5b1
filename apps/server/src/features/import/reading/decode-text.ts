import { ReadingRefusal, type TextEncodingName } from './reading-result.ts';

function zerosAt(bytes: Uint8Array, parity: 0 | 1): number {
  let zeros = 0;
  const length = Math.min(bytes.length, 2000);
  for (let index = parity; index < length; index += 2) if (bytes[index] === 0) zeros++;
  return zeros / Math.max(1, length / 2);
}

function encodingOf(bytes: Uint8Array): TextEncodingName {
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return 'utf-8';
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  // Text in Latin letters has every second byte zero in UTF-16.
  if (zerosAt(bytes, 1) > 0.4 && zerosAt(bytes, 0) < 0.1) return 'utf-16le';
  if (zerosAt(bytes, 0) > 0.4 && zerosAt(bytes, 1) < 0.1) return 'utf-16be';
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return 'utf-8';
  } catch {
    return 'windows-1252';
  }
}

/**
 * Decodes a text file: UTF-8 and UTF-16 with or without byte-order mark; what is neither is Windows-1252, the usual
 * form of sheets saved as CSV on Windows.
 *
 * @throws ReadingRefusal `not-a-spreadsheet` for binary content, `file-empty` for nothing but white space
 */
export function decodeText(bytes: Uint8Array): { readonly text: string; readonly encoding: TextEncodingName } {
  const encoding = encodingOf(bytes);
  const text = new TextDecoder(encoding).decode(bytes).replace(/^\ufeff/, '');
  const start = text.slice(0, 20_000);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what tells binary files
  const control = start.match(/[\u0000-\u0008\u000e-\u001f\ufffd]/g)?.length ?? 0;
  if (start.includes('\u0000') || control > start.length / 100) {
    throw new ReadingRefusal(
      'not-a-spreadsheet',
      'The file is neither a workbook (XLSX) nor text (CSV). Save the register as XLSX or CSV.',
    );
  }
  if (text.trim() === '')
    throw new ReadingRefusal(
      'file-empty',
      'The file holds nothing but empty lines. Save the register again and choose that file.',
    );
  return { text, encoding };
}
