// @ts-check
import { accessSync, constants } from 'node:fs';
import path from 'node:path';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];

/** @param {string} file */
function runs(file) {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false; // not there, or not a program
  }
}

/** @returns {string | undefined} the Chromium of this machine: CHROMIUM, then the PATH, then Debian's place */
export function findChromium() {
  if (process.env.CHROMIUM) return runs(process.env.CHROMIUM) ? process.env.CHROMIUM : undefined;
  const folders = (process.env.PATH ?? '').split(path.delimiter).filter(Boolean);
  const candidates = [...folders.flatMap((folder) => NAMES.map((name) => path.join(folder, name))), '/usr/bin/chromium'];
  return candidates.find(runs);
}

export const NO_CHROMIUM = 'no Chromium was found (CHROMIUM, the PATH, /usr/bin/chromium)';

/** Nothing that a test does not ask for: no sandbox (root in containers), no background traffic. */
export const CHROMIUM_ARGS = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync', '--font-render-hinting=none'];
