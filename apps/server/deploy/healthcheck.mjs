// Health check of the image: ends with 0 when this process may be sent work. Plain JavaScript: it is run as it is.
import { request as http } from 'node:http';
import { request as https } from 'node:https';

const { SEATWELL_PORT: port = '4310', SEATWELL_TLS_CERT, SEATWELL_TLS_LOCAL } = process.env;
const secure = Boolean(SEATWELL_TLS_CERT) || SEATWELL_TLS_LOCAL === '1';

// On the loopback address of the container itself nobody else can answer, whatever name its certificate has.
const options = { host: '127.0.0.1', port, path: '/api/v1/health', timeout: 4_000, rejectUnauthorized: false };
const asked = (secure ? https : http)(options, (response) => process.exit(response.statusCode === 200 ? 0 : 1));
asked.on('timeout', () => asked.destroy());
asked.on('error', () => process.exit(1));
asked.end();
