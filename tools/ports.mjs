// @ts-check
import { createServer } from 'node:net';
import { codeOf, Complaint } from './complaint.mjs';

/** @param {number} port @param {string} host @returns {Promise<number>} the port that was bound */
function bindOnce(port, host) {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen({ port, host, exclusive: true }, () => {
      const address = server.address();
      server.close(() => resolve(typeof address === 'object' && address ? address.port : port));
    });
  });
}

/** @param {string} [host] */
export const freePort = (host = '127.0.0.1') => bindOnce(0, host);

/** @param {number} port @param {string} [host] */
export const isFree = (port, host = '127.0.0.1') => bindOnce(port, host).then(() => true, () => false);

/** @param {number} port @param {string} host */
export function portTaken(port, host) {
  return new Complaint(`Port ${port} on ${host} is in use by another program: stop that program, or choose another port with PORT=${port + 1} npm start.`);
}

/** @param {number} port @param {string} host */
export async function needPort(port, host) {
  try {
    await bindOnce(port, host);
  } catch (error) {
    const code = codeOf(error);
    if (code === 'EADDRINUSE') throw portTaken(port, host);
    if (code === 'EACCES') throw new Complaint(`This user may not listen on port ${port}: choose a port above 1023 with PORT.`);
    if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND') throw new Complaint(`HOST=${host} is not an address of this machine.`);
    throw error;
  }
}

/** @param {string | undefined} text @param {number} otherwise */
export function portFrom(text, otherwise) {
  if (!text) return otherwise;
  const port = Number(text);
  if (!Number.isInteger(port) || port < 1 || port > 65_535) throw new Complaint(`PORT=${text} is not a port: it must be a whole number from 1 to 65535.`);
  return port;
}
