import { catalogue } from '../../catalogue.ts';

/** H. Electrical. */
export const h = catalogue({
  'checklists.H1.what': {
    en: 'By a licensed electrician: permit, own circuit, GFCI, cover for use in rain, burial',
    es: 'Por electricista con licencia: permiso, circuito propio, GFCI, cubierta para lluvia, enterrado',
  },
  'checklists.H1.acceptance': { en: 'Certificate; GFCI trips and resets; voltage drop {drop:percent} or less', es: 'Certificado; el GFCI dispara y se restablece; caída de voltaje {drop:percent} o menos' },
  'checklists.H1.photo': { en: 'The cover, the breaker label, the trench depth', es: 'La cubierta, la etiqueta del interruptor, la profundidad' },
  'checklists.H1.whyCrew': { en: 'Water and house voltage.', es: 'Agua y voltaje de casa.' },
  'checklists.H1.whyHome': { en: 'A safety switch protects you; a separate circuit keeps it running.', es: 'Un interruptor lo protege; un circuito aparte la mantiene andando.' },

  'checklists.H2.what': { en: 'Alarm on another circuit or battery, heard indoors', es: 'Alarma en otro circuito o batería, se oye adentro' },
  'checklists.H2.acceptance': { en: '{sound:count} dB or more in bedroom or kitchen', es: '{sound:count} dB o más en dormitorio o cocina' },
  'checklists.H2.photo': { en: 'The alarm lit', es: 'La alarma encendida' },
  'checklists.H2.whyCrew': { en: 'A dead GFCI must not silence it.', es: 'Un GFCI caído no debe callarla.' },
  'checklists.H2.whyHome': { en: 'You hear it before water does harm.', es: 'La oye antes de que el agua haga daño.' },

  'checklists.H3.what': { en: 'Backup proven', es: 'Respaldo probado' },
  'checklists.H3.acceptance': { en: 'Main pump unplugged, backup starts; battery read under load', es: 'Bomba principal desconectada, el respaldo arranca; batería leída con carga' },
  'checklists.H3.photo': { en: 'Both floats', es: 'Los dos flotadores' },
  'checklists.H3.whyCrew': { en: 'An untested backup is decoration.', es: 'Un respaldo sin probar es adorno.' },
  'checklists.H3.whyHome': { en: 'It works when the power is out.', es: 'Trabaja cuando no hay luz.' },
});
