import { toString as qrToString } from 'qrcode';

/** An address as a QR code, black on white, with half of its quiet zone: the page leaves the other half. */
export async function qrSvg(address: string): Promise<string> {
  return qrToString(address, { type: 'svg', errorCorrectionLevel: 'M', margin: 2 });
}
