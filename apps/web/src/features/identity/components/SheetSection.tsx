import './SheetSection.css';

/** A section without figures, for the sheet that a person signs in on: the house, the low spot, the way of the water. */
export function SheetSection() {
  return (
    <svg className="sheet-section" viewBox="0 0 640 400" aria-hidden="true">
      <path className="sheet-section-line" d="M24 20v60l-8 8 16 8-8 8v92M138 20v64h12V20M150 150v46h-20v-34H24M24 150h126" />
      <path className="sheet-section-hair" d="M30 162l12-12M48 162l12-12M66 162l12-12M84 162l12-12M102 162l12-12M120 162l12-12M132 178l18-18M132 194l18-18" />
      <path className="sheet-section-soil" d="M150 160h22c12 0 16 10 24 10M256 170c14 0 18-12 40-12h30M398 158h120c30 0 40 22 106 24" />
      <path className="sheet-section-bold" d="M196 170v26h60v-26zM206 170v8M218 170v8M230 170v8M242 170v8" />
      <path className="sheet-section-line" d="M256 180l78 13M256 190l78 13" />
      <path className="sheet-section-bold" d="M334 156v164h56V156M326 156h72" />
      <path className="sheet-section-line" d="M348 320v-30h28v30M358 290v-74q0-12 12-12h196M366 290v-70q0-8 8-8h192M566 174v44h24v-42M556 174h38" />
      <path className="sheet-section-water" d="M334 262h56M382 262l-6-9h12zM376 266h12M379 270h6" />
      <path className="sheet-section-water" d="M176 160h104M270 160l-6-9h12zM264 164h12M267 168h6" />
      <path className="sheet-section-sill" d="M150 150h474" />
      <path className="sheet-section-hair" d="M24 360h600M24 354v12M150 354v12M226 354v12M362 354v12M578 354v12M624 354v12" />
    </svg>
  );
}
