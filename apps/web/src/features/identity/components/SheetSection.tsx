import './SheetSection.css';

/** A section without figures, for the sheet that a person signs in on: the house, the low spot, the way of the water. */
export function SheetSection() {
  return (
    <svg className="sheet-section" viewBox="0 0 640 420" aria-hidden="true">
      <path className="sheet-section-soil" d="M150 160h30M186 160c20 14 60 14 84 0M330 160h230c24 0 30 24 60 24" />
      <path className="sheet-section-line" d="M20 400V60h14v100h104V60h12v100M20 60h130M138 152h12" />
      <path className="sheet-section-bold" d="M194 166h64v26h-64zM204 166v10M216 166v10M228 166v10M240 166v10" />
      <path className="sheet-section-line" d="M258 178l76 14M258 188l76 14" />
      <path className="sheet-section-bold" d="M334 156v164h56V156M326 156h72" />
      <path className="sheet-section-line" d="M350 320v-30h24v30M362 290v-76q0-12 12-12h186M374 208h186M560 190v24h20v-24" />
      <path className="sheet-section-water" d="M334 268h56M350 268l6 9h-12zM342 281h16M346 286h8" />
      <path className="sheet-section-water" d="M176 170h8M186 154h84M222 154l6-9h-12z" />
      <path className="sheet-section-sill" d="M150 152h470" />
      <path className="sheet-section-hair" d="M20 372h600M20 366v12M150 366v12M226 366v12M362 366v12M570 366v12M620 366v12" />
    </svg>
  );
}
