import { createHash } from 'node:crypto';
import sharp from 'sharp';

/** Sky, grass and what stands in the picture, by the group of the checklist item. */
const motifs: Readonly<Record<string, (at: number) => string>> = {
  A: (x) => `<rect x="${x}" y="210" width="190" height="120" fill="#6b7280"/><circle cx="${x + 40}" cy="335" r="26" fill="#1f2937"/><circle cx="${x + 150}" cy="335" r="26" fill="#1f2937"/>`,
  B: (x) => `<path d="M${x} 380 L${x + 60} 200 L${x + 120} 380" stroke="#92400e" stroke-width="10" fill="none"/><rect x="${x + 35}" y="170" width="50" height="34" fill="#f59e0b"/>`,
  C: (x) => `<path d="M0 330 H640 V480 H0 Z" fill="#7c4a21"/><path d="M${x} 330 H${x + 160} L${x + 120} 450 H${x + 40} Z" fill="#3f2511"/>`,
  D: (x) => `<rect x="0" y="320" width="640" height="60" fill="#cbd5e1"/><rect x="${x}" y="335" width="320" height="24" fill="#334155"/>${Array.from({ length: 15 }, (_, i) => `<rect x="${x + 6 + i * 21}" y="338" width="8" height="18" fill="#94a3b8"/>`).join('')}`,
  E: (x) => `<path d="M0 330 H640 V480 H0 Z" fill="#7c4a21"/><path d="M${x} 380 L640 420" stroke="#f8fafc" stroke-width="34"/><path d="M${x} 380 L640 420" stroke="#cbd5e1" stroke-width="4"/>`,
  F: (x) => `<path d="M0 300 H640 V480 H0 Z" fill="#7c4a21"/><rect x="${x}" y="300" width="170" height="170" fill="#1e3a5f"/><rect x="${x + 70}" y="330" width="36" height="110" fill="#0f172a"/><rect x="${x + 84}" y="240" width="10" height="100" fill="#f8fafc"/>`,
  G: (x) => `<circle cx="${x + 60}" cy="360" r="52" fill="#166534"/><circle cx="${x + 60}" cy="360" r="36" fill="#15803d"/><path d="M${x + 60} 360 q-30 -70 -60 -20 M${x + 60} 360 q30 -70 60 -20" stroke="#bae6fd" stroke-width="8" fill="none"/>`,
  H: (x) => `<rect x="${x}" y="190" width="150" height="200" fill="#94a3b8"/><rect x="${x + 20}" y="210" width="110" height="160" fill="#475569"/><rect x="${x + 55}" y="250" width="40" height="22" fill="#f8fafc"/>`,
  I: (x) => `<rect x="0" y="310" width="640" height="90" fill="#e2e8f0"/><rect x="${x}" y="300" width="240" height="8" fill="#92400e"/>`,
  J: (x) => `<path d="M${x} 200 v180 h150 v-180" stroke="#1e3a5f" stroke-width="10" fill="none"/><path d="M${x + 8} 300 h134 v74 h-134 Z" fill="#38bdf8"/><circle cx="${x + 220}" cy="260" r="48" fill="#f8fafc" stroke="#0f172a" stroke-width="6"/>`,
};

/** A small drawn picture as a real JPEG: the same words give the same bytes, other words another picture. */
export async function drawScene(group: string, words: string): Promise<Buffer> {
  const seed = createHash('sha256').update(words).digest();
  const byte = (index: number) => seed[index] ?? 0;
  const sky = `hsl(${String(195 + (byte(0) % 30))} 60% ${String(70 + (byte(1) % 18))}%)`;
  const grass = `hsl(${String(90 + (byte(2) % 40))} 35% ${String(34 + (byte(3) % 16))}%)`;
  const motif = motifs[group] ?? motifs['A'];
  const stones = Array.from({ length: 8 }, (_, i) => `<circle cx="${(byte(4 + i) * 5) % 640}" cy="${400 + (byte(12 + i) % 76)}" r="${4 + (byte(20 + i) % 9)}" fill="#57534e"/>`).join('');
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="640" height="480"><rect width="640" height="480" fill="${sky}"/><rect y="300" width="640" height="180" fill="${grass}"/>${motif?.(90 + (byte(31) % 160)) ?? ''}${stones}</svg>`;
  return sharp(Buffer.from(svg)).jpeg({ quality: 72 }).toBuffer();
}
