/**
 * A sort key by which U2-9 stands before U10-1: runs of digits compare as numbers. Stored as bytes, so that no
 * database server's locale has a say in the order.
 */
export function naturalKey(text: string): Buffer {
  const key = text.toUpperCase().replace(/\d+/g, (digits) => digits.replace(/^0+(?=\d)/, '').padStart(10, '0'));
  return Buffer.from(key, 'utf8');
}
