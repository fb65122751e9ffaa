import { catalogue } from '../../catalogue.ts';

/** What a remedy would change in the document. */
export const remedies = catalogue({
  'findings.remedy.lowerGrate': { en: 'Set the grate of {part:text} 1/8 in below its surface', es: 'Bajar la rejilla de {part:text} 1/8 in bajo la superficie' },
  'findings.remedy.levelChannel': { en: 'Set {part:text} level', es: 'Poner {part:text} a nivel' },
  'findings.remedy.lowerPipe': { en: 'Start {pipe:text} at the channel floor', es: 'Empezar {pipe:text} al fondo del canal' },
  'findings.remedy.thickerSurround': { en: 'Give {part:text} {thickness:height} of concrete', es: 'Dar a {part:text} {thickness:height} de concreto' },
  'findings.remedy.lowerPipeEnd': { en: 'Lay {pipe:text} at {slope:slope}: lower end at {level:level}', es: 'Tender {pipe:text} con {slope:slope}: extremo bajo a {level:level}' },
  'findings.remedy.largerPipe': { en: 'Make {pipe:text} {diameter:diameter}', es: 'Hacer {pipe:text} de {diameter:diameter}' },
  'findings.remedy.addCleanout': { en: 'Add a cleanout to {pipe:text}', es: 'Agregar un registro a {pipe:text}' },
  'findings.remedy.longSweep': { en: 'Use long sweeps on {pipe:text}', es: 'Usar curvas largas en {pipe:text}' },
  'findings.remedy.smoothPipe': { en: 'Make {pipe:text} smooth solid pipe', es: 'Hacer {pipe:text} de tubo liso sólido' },
  'findings.remedy.tightJoints': { en: 'Use gasketed joints on {pipe:text}', es: 'Usar juntas con empaque en {pipe:text}' },
  'findings.remedy.widerBasin': { en: 'Make {basin:text} {diameter:diameter} wide', es: 'Hacer {basin:text} de {diameter:diameter}' },
  'findings.remedy.raiseOff': { en: 'Set the stop level of {basin:text} {above:height} above the floor', es: 'Poner el nivel de paro de {basin:text} {above:height} sobre el fondo' },
  'findings.remedy.lowerOn': { en: 'Set the start level of {basin:text} {below:height} below the inlet', es: 'Poner el nivel de arranque de {basin:text} {below:height} bajo la entrada' },
  'findings.remedy.setAlarm': { en: 'Set the alarm of {basin:text} {over:height} above the start level', es: 'Poner la alarma de {basin:text} {over:height} sobre el arranque' },
  'findings.remedy.verticalFloat': { en: 'Use a vertical float in {basin:text}', es: 'Usar flotador vertical en {basin:text}' },
  'findings.remedy.largerCollar': { en: 'Pour a collar of {volume:bulk} at {basin:text}', es: 'Colar un collar de {volume:bulk} en {basin:text}' },
  'findings.remedy.solidBasin': { en: 'Use a solid wall for {basin:text}', es: 'Usar pared sólida en {basin:text}' },
  'findings.remedy.boltLid': { en: 'Bolt the lid of {basin:text}', es: 'Atornillar la tapa de {basin:text}' },
  'findings.remedy.smallerWeep': { en: 'Drill a 1/8 in weep hole for {pump:text}', es: 'Perforar una purga de 1/8 in para {pump:text}' },
  'findings.remedy.widerPit': { en: 'Make the pit of {outlet:text} {area:area}', es: 'Hacer el pozo de {outlet:text} de {area:area}' },
  'findings.remedy.noCord': { en: 'Wire the pump without an extension cord', es: 'Conectar la bomba sin extensión' },
  'findings.remedy.gfci': { en: 'Add ground-fault protection', es: 'Agregar protección de falla a tierra' },
  'findings.remedy.dedicated': { en: 'Give the pump its own circuit', es: 'Dar a la bomba su propio circuito' },
  'findings.remedy.alarmCircuit': { en: 'Put the alarm on another circuit', es: 'Poner la alarma en otro circuito' },
});
