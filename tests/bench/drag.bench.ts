import { chromium } from '@playwright/test';
import { report } from '../../packages/calc/bench/measure.ts';
import { CHROMIUM_ARGS, findChromium } from '../../tools/chromium.mjs';
import { dragBasinInvert, openYard } from '../e2e/support/drag.ts';
import { startService } from '../support/processes.ts';

// 25 parts, 200 levels; the basin's invert is dragged for ten seconds at a desk.
const service = await startService();
process.env.E2E_DATA_DIR = service.dataDir;
const executablePath = findChromium();
const browser = await chromium.launch({ ...(executablePath === undefined ? {} : { executablePath }), args: CHROMIUM_ARGS });
try {
  // People open contexts of their own; addresses of the service are relative there.
  const open = browser.newContext.bind(browser);
  browser.newContext = (options) => open({ ...options, baseURL: service.url });
  const { person, design } = await openYard(browser, 'Bench');
  const frames = (await dragBasinInvert(person.page, design, 10)).sort((a, b) => a - b);
  const at = (share: number): number => frames[Math.min(frames.length - 1, Math.floor(share * frames.length))] ?? 0;
  report('drag of the basin invert, 25 parts, 200 levels: frame, median', at(0.5), 'ms');
  report('drag of the basin invert, 25 parts, 200 levels: frame, 95 of 100 within', at(0.95), 'ms', 20);
  report('drag of the basin invert: frames in 10 s', frames.length, '-');
} finally {
  await browser.close();
  await service.remove();
}
