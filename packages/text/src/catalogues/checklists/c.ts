import { catalogue } from '../../catalogue.ts';

/** C. Cut, break, dig. */
export const c = catalogue({
  'checklists.C1.what': { en: 'Wet saw, straight line, no overcut at the door', es: 'Sierra con agua, línea recta, sin pasarse en la puerta' },
  'checklists.C1.acceptance': { en: 'Line within {tolerance:tape}; water on; overcut {overcut:tape} or less', es: 'Línea dentro de {tolerance:tape}; agua abierta; corte de más {overcut:tape} o menos' },
  'checklists.C1.photo': { en: 'The wet saw and the chalk line', es: 'La sierra mojada y la línea de tiza' },
  'checklists.C1.whyCrew': { en: 'Silica dust: water is the rule.', es: 'Polvo de sílice: el agua es la regla.' },
  'checklists.C1.whyHome': { en: 'A straight cut, no dust in the house.', es: 'Un corte recto, sin polvo en la casa.' },

  'checklists.C2.what': { en: 'Broken and removed; edge clean; kept slab not undermined', es: 'Roto y retirado; borde limpio; losa que queda sin socavar' },
  'checklists.C2.acceptance': { en: 'Void under the kept slab under {void:tape}, or packed', es: 'Hueco bajo la losa menor de {void:tape}, o rellenado' },
  'checklists.C2.photo': { en: 'The edge', es: 'El borde' },
  'checklists.C2.whyCrew': { en: 'A hollow slab cracks later.', es: 'Una losa hueca se agrieta después.' },
  'checklists.C2.whyHome': { en: 'We keep your slab supported.', es: 'Mantenemos su losa apoyada.' },

  'checklists.C3.what': { en: 'Marks photographed, hand-dig strips flagged, each crossing exposed by hand', es: 'Marcas fotografiadas, franjas a mano señaladas, cada cruce descubierto a mano' },
  'checklists.C3.acceptance': { en: 'Seen, depth written down, {clearance:tape} clear or the design changes', es: 'Visto, profundidad anotada, {clearance:tape} libres o cambia el diseño' },
  'checklists.C3.photo': { en: 'Each exposed line with the tape', es: 'Cada línea descubierta con la cinta' },
  'checklists.C3.whyCrew': { en: 'No machine inside the strip.', es: 'Ninguna máquina dentro de la franja.' },
  'checklists.C3.whyHome': { en: 'We see it before any machine passes.', es: 'Lo vemos antes de que pase una máquina.' },

  'checklists.C3Line.what': { en: '{line:text}: mark photographed, strip flagged, exposed by hand where it is crossed', es: '{line:text}: marca fotografiada, franja señalada, descubierta a mano donde se cruza' },
  'checklists.C3Line.acceptance': {
    en: 'Seen, depth written down, {clearance:tape} clear or the design changes; or {strip:tape} or more from the trench to the mark',
    es: 'Vista, profundidad anotada, {clearance:tape} libres o cambia el diseño; o {strip:tape} o más de la zanja a la marca',
  },
  'checklists.C3Line.photo': { en: 'The exposed line with the tape, or the tape from trench to mark', es: 'La línea descubierta con la cinta, o la cinta de la zanja a la marca' },
  'checklists.C3Line.whyCrew': { en: 'No machine inside the strip.', es: 'Ninguna máquina dentro de la franja.' },
  'checklists.C3Line.whyHome': { en: 'We see it before any machine passes.', es: 'Lo vemos antes de que pase una máquina.' },
  'checklists.C3Private.what': { en: '{line:term}: mark photographed, strip flagged, exposed by hand where it is crossed', es: '{line:term}: marca fotografiada, franja señalada, descubierta a mano donde se cruza' },
  'checklists.C3Private.acceptance': {
    en: 'Seen, depth written down, {clearance:tape} clear or the design changes; or {strip:tape} or more from the trench to the mark',
    es: 'Vista, profundidad anotada, {clearance:tape} libres o cambia el diseño; o {strip:tape} o más de la zanja a la marca',
  },
  'checklists.C3Private.photo': { en: 'The exposed line with the tape, or the tape from trench to mark', es: 'La línea descubierta con la cinta, o la cinta de la zanja a la marca' },
  'checklists.C3Private.whyCrew': { en: 'No machine inside the strip.', es: 'Ninguna máquina dentro de la franja.' },
  'checklists.C3Private.whyHome': { en: 'We see it before any machine passes.', es: 'Lo vemos antes de que pase una máquina.' },

  'checklists.C4.what': { en: 'Trench to the grade line, firm bottom, not over-dug', es: 'Zanja a la línea de pendiente, fondo firme, sin cavar de más' },
  'checklists.C4.acceptance': { en: 'String or laser within {tolerance:tape}; over-dig refilled and tamped', es: 'Hilo o láser dentro de {tolerance:tape}; lo cavado de más rellenado y compactado' },
  'checklists.C4.photo': { en: 'The rod in the trench', es: 'La mira en la zanja' },
  'checklists.C4.whyCrew': { en: 'A soft bottom makes a belly.', es: 'Un fondo blando hace una panza.' },
  'checklists.C4.whyHome': { en: 'Soft ground would let the pipe sag.', es: 'El suelo blando dejaría hundir el tubo.' },

  'checklists.C5.what': { en: 'Excavation safe, looked at by the competent person, again after rain', es: 'Excavación segura, vista por la persona competente, otra vez tras lluvia' },
  'checklists.C5.acceptance': {
    en: 'Spoil {spoil:length} back; from {ladderFrom:length} a ladder within {ladderWithin:length}; from {protectFrom:length} protected',
    es: 'Tierra a {spoil:length}; desde {ladderFrom:length} escalera a {ladderWithin:length}; desde {protectFrom:length} protegida',
  },
  'checklists.C5.photo': { en: 'The edge and the ladder', es: 'El borde y la escalera' },
  'checklists.C5.whyCrew': { en: 'Cave-ins give no warning.', es: 'Los derrumbes no avisan.' },
  'checklists.C5.whyHome': { en: 'The hole is fenced or covered at night.', es: 'El hoyo queda cercado o tapado de noche.' },

  'checklists.C6.what': { en: 'Pit bottom on native soil or packed stone; water depth written down', es: 'Fondo del pozo en suelo natural o piedra compactada; nivel del agua anotado' },
  'checklists.C6.acceptance': {
    en: 'Level within {tolerance:tape} across; stone {stoneFrom:tape} to {stoneTo:tape}; water level read',
    es: 'A nivel dentro de {tolerance:tape}; piedra {stoneFrom:tape} a {stoneTo:tape}; nivel del agua leído',
  },
  'checklists.C6.photo': { en: 'The pit with the tape', es: 'El pozo con la cinta' },
  'checklists.C6.whyCrew': { en: 'A tilted basin jams floats.', es: 'Un pozo inclinado traba los flotadores.' },
  'checklists.C6.whyHome': { en: 'It shows how high the ground water stands.', es: 'Muestra qué tan alta está el agua del suelo.' },

  'checklists.C7.what': { en: 'Footing clear of the trench slope', es: 'Cimiento libre del talud de la zanja' },
  'checklists.C7.acceptance': { en: 'Trench bottom above the slope line from the footing', es: 'Fondo de zanja sobre la línea de talud del cimiento' },
  'checklists.C7.photo': { en: 'The tape to the footing', es: 'La cinta hasta el cimiento' },
  'checklists.C7.whyCrew': { en: 'Undermining is structural.', es: 'Socavar es daño estructural.' },
  'checklists.C7.whyHome': { en: 'We do not dig under your house.', es: 'No cavamos bajo su casa.' },

  'checklists.C8.what': { en: 'Termite-treated soil noted and kept apart; pest firm told', es: 'Suelo tratado contra termitas anotado y aparte; empresa avisada' },
  'checklists.C8.acceptance': { en: 'Notice sent', es: 'Aviso enviado' },
  'checklists.C8.whyCrew': { en: 'The termite contract can become void.', es: 'El contrato de termitas puede perder validez.' },
  'checklists.C8.whyHome': { en: 'Your termite cover may need a new treatment.', es: 'Su protección de termitas puede necesitar otro tratamiento.' },
});
