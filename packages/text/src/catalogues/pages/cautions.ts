import { catalogue } from '../../catalogue.ts';

/** Safety in short, each with its source. */
export const cautionPages = catalogue({
  'ui.caution.firstOneCall': { en: 'Local code and the one-call center come first; where they ask for more, do more.', es: 'El código local y el centro de llamadas van primero; si piden más, haga más.' },
  'ui.caution.firstOneCall.source': { en: 'Call 811', es: 'Llame al 811' },
  'ui.caution.handDig': {
    en: 'Within the strip each side of a mark, 18 to 24 in by state, dig by hand or vacuum until the line is seen. No machine in the strip.',
    es: 'En la franja a cada lado de una marca, 18 a 24 in según el estado, cave a mano o con vacío hasta ver la línea. Sin máquina en la franja.',
  },
  'ui.caution.handDig.source': { en: 'State one-call rules', es: 'Reglas estatales de aviso' },
  'ui.caution.privateLines': {
    en: '811 marks only what utilities own: gas after the meter, pool, septic, irrigation, and lights are the owner’s to show.',
    es: 'El 811 solo marca lo de las empresas: gas tras el medidor, piscina, séptico, riego y luces los muestra el dueño.',
  },
  'ui.caution.privateLines.source': { en: 'One-call centers', es: 'Centros de llamadas' },
  'ui.gasRule.of': { en: 'What {gasCompany:text} told us', es: 'Lo que nos dijo {gasCompany:text}' },
  'ui.gasRule.source': { en: '{source:text}, read {readOn:date}. Entered by {by:text}, {at:dateTime}', es: '{source:text}, leído {readOn:date}. Anotado por {by:text}, {at:dateTime}' },
  'ui.gasRule.beside': { en: 'It stands beside the steps here. Nobody goes back for it.', es: 'Va junto con los pasos de aquí. Nadie regresa por ello.' },
  'ui.gasRule.none': { en: 'Your company has entered no rule of its gas company for a running engine. The steps here stand.', es: 'Su empresa no ha anotado ninguna regla de su compañía de gas para un motor encendido. Valen los pasos de aquí.' },
  'ui.gasRule.notHere': { en: 'This phone does not know whether your company entered a rule of its gas company. The steps here stand.', es: 'Este teléfono no sabe si su empresa anotó una regla de su compañía de gas. Valen los pasos de aquí.' },
  'ui.caution.gasStrike': {
    en: 'Gas line hit: leave now, upwind, take everyone along. Start nothing, restart nothing, touch no switch, valve, or flame; no phone until clear. Leave the hole open. Then 911, the gas company, 811.',
    es: 'Línea de gas golpeada: salga ya, contra el viento, con todos. No arranque nada, no toque interruptor, válvula ni llama; sin teléfono hasta estar lejos. Deje el hoyo abierto. Luego 911, la compañía de gas, 811.',
  },
  'ui.caution.gasStrike.source': { en: 'One-call centers; your gas company’s own rule comes first', es: 'Centros de llamadas; la regla de su compañía de gas va primero' },
  'ui.caution.caveIn': {
    en: 'Nobody in a trench 5 ft deep or more without protection, less if the soil moves; out while water stands in it.',
    es: 'Nadie en una zanja de 5 ft o más sin protección, menos si la tierra se mueve; fuera mientras haya agua.',
  },
  'ui.caution.caveIn.source': { en: '29 CFR 1926.651 and .652', es: '29 CFR 1926.651 y .652' },
  'ui.caution.slab': {
    en: 'Stop the saw. A stretched cable in the slab kills when it is cut; conduit and gas may lie in it too. Scan before the next cut.',
    es: 'Pare la sierra. Un cable tensado en la losa mata si se corta; puede haber conducto o gas. Escanee antes del próximo corte.',
  },
  'ui.caution.slab.source': { en: 'Common practice', es: 'Práctica común' },
  'ui.caution.utility': {
    en: 'Keep off the line and let no machine move near it. Damage of any kind: tell the owner of the line and 811; gas or danger: 911.',
    es: 'Aléjese de la línea y no mueva máquina cerca. Cualquier daño: avise al dueño de la línea y al 811; gas o peligro: 911.',
  },
  'ui.caution.utility.source': { en: 'One-call centers', es: 'Centros de llamadas' },
  'ui.caution.oldPipe': { en: 'An old pipe may hold asbestos or lead: do not saw it.', es: 'Un tubo viejo puede tener asbesto o plomo: no lo corte.' },
  'ui.caution.oldPipe.source': { en: 'Common practice', es: 'Práctica común' },
  'ui.caution.pit': { en: 'Never put head or body into a basin; gas may stand in it. Cover or fence every hole.', es: 'Nunca meta la cabeza ni el cuerpo en un pozo; puede haber gas. Tape o cerque cada hoyo.' },
  'ui.caution.pit.source': { en: '29 CFR 1926 Subpart AA', es: '29 CFR 1926 Subparte AA' },
  'ui.caution.electricity': {
    en: 'Water and power: look for outlets, cords, and a wet panel before you wet anything. Never step into water that may be live.',
    es: 'Agua y luz: busque enchufes, cables y tablero mojado antes de mojar nada. Nunca pise agua que pueda tener corriente.',
  },
  'ui.caution.electricity.source': { en: 'Common practice', es: 'Práctica común' },
  'ui.caution.sewage': { en: 'This water may be foul: gloves, no splashing, wash before you eat or touch your face.', es: 'Esta agua puede estar contaminada: guantes, sin salpicar, lávese antes de comer o tocarse la cara.' },
  'ui.caution.sewage.source': { en: 'Common practice', es: 'Práctica común' },
  'ui.caution.drillDust': { en: 'Concrete dust harms the lungs: drill with a shroud and a vacuum, or wet.', es: 'El polvo de concreto daña los pulmones: perfore con aspiradora y capucha, o en mojado.' },
  'ui.caution.drillDust.source': { en: '29 CFR 1926.1153', es: '29 CFR 1926.1153' },
});
