import { catalogue } from '../catalogue.ts';

/** Words of the frame: header, buttons, fields, saved states, sizes. */
export const ui = catalogue({
  'ui.unit.ft': { en: 'feet', es: 'pies' },
  'ui.unit.in': { en: 'inches', es: 'pulgadas' },
  'ui.unit.m': { en: 'meters', es: 'metros' },
  'ui.unit.cm': { en: 'centimeters', es: 'centímetros' },
  'ui.unit.mm': { en: 'millimeters', es: 'milímetros' },
  'ui.days': { en: '{n:plural|# day|# days}', es: '{n:plural|# día|# días}' },

  'ui.skip': { en: 'Go to the content', es: 'Ir al contenido' },
  'ui.main': { en: 'Main', es: 'Principal' },
  'ui.home': { en: 'Home', es: 'Inicio' },
  'ui.newJob': { en: 'Take a call', es: 'Anotar una llamada' },
  'ui.company': { en: 'Company', es: 'Empresa' },
  'ui.signOut': { en: 'Sign out', es: 'Cerrar sesión' },
  'ui.signedInAs': { en: 'Signed in', es: 'Sesión de' },
  'ui.reading': { en: 'How I read', es: 'Cómo leo' },
  'ui.switch.language': { en: 'Language', es: 'Idioma' },
  'ui.switch.units': { en: 'Units', es: 'Unidades' },
  'ui.switch.theme': { en: 'Page', es: 'Página' },
  'ui.language.en': { en: 'English', es: 'English' },
  'ui.language.es': { en: 'Español', es: 'Español' },
  'ui.units.us': { en: 'Feet', es: 'Pies' },
  'ui.units.metric': { en: 'Meters', es: 'Metros' },
  'ui.theme.auto': { en: 'Auto', es: 'Auto' },
  'ui.theme.light': { en: 'Light', es: 'Clara' },
  'ui.theme.dark': { en: 'Dark', es: 'Oscura' },

  'ui.optional': { en: 'may stay empty', es: 'puede quedar vacío' },
  'ui.checkField': { en: 'The office could not take this. Check it.', es: 'La oficina no pudo aceptar esto. Revíselo.' },
  'ui.needed': { en: 'This is needed.', es: 'Esto hace falta.' },
  'ui.choose': { en: 'Choose', es: 'Elija' },
  'ui.yes': { en: 'Yes', es: 'Sí' },
  'ui.no': { en: 'No', es: 'No' },
  'ui.close': { en: 'Close', es: 'Cerrar' },
  'ui.cancel': { en: 'Leave it', es: 'Dejarlo' },
  'ui.tryAgain': { en: 'Try again', es: 'Intentar otra vez' },
  'ui.loading': { en: 'Fetching {what:text} ...', es: 'Trayendo {what:text} ...' },
  'ui.sending': { en: 'Sending ...', es: 'Enviando ...' },
  'ui.more': { en: 'Show older ones', es: 'Mostrar los anteriores' },

  'ui.length.reads': { en: 'Reads as {value:levelAndTape}', es: 'Se lee {value:levelAndTape}' },
  'ui.length.readsShort': { en: 'Reads as {value:tape}', es: 'Se lee {value:tape}' },
  'ui.length.ask': { en: 'Is “{typed:text}” feet or inches? Choose, or write the mark.', es: '¿“{typed:text}” son pies o pulgadas? Elija, o escriba la marca.' },
  'ui.length.asFeet': { en: '{value:levelAndTape}', es: '{value:levelAndTape}' },
  'ui.length.unreadable': {
    en: 'This is not read as a length. Write it like 0.27\', 3 1/4", 3\' 3" or 35 mm.',
    es: 'Esto no se lee como longitud. Escríbala como 0.27\', 3 1/4", 3\' 3" o 35 mm.',
  },
  'ui.number.unreadable': { en: 'This is not a number.', es: 'Esto no es un número.' },

  'ui.saved.saving': { en: 'Saving ...', es: 'Guardando ...' },
  'ui.saved.office': { en: 'Saved in the office, {at:dateTime}', es: 'Guardado en la oficina, {at:dateTime}' },
  'ui.saved.device': { en: 'Saved on this phone; not yet in the office', es: 'Guardado en este teléfono; aún no en la oficina' },
  'ui.saved.failed': { en: 'Not saved', es: 'No guardado' },
  'ui.saved.changed': { en: 'Changed, not saved yet', es: 'Cambiado, aún no guardado' },

  'ui.mark.stop': { en: 'Stop', es: 'Alto' },
  'ui.mark.caution': { en: 'Caution', es: 'Precaución' },
  'ui.mark.note': { en: 'Note', es: 'Nota' },
  'ui.mark.refer': { en: 'Engineer', es: 'Ingeniero' },

  'ui.file.choose': { en: 'Choose a file', es: 'Elegir un archivo' },
  'ui.file.chosen': { en: '{name:text}, {size:text}', es: '{name:text}, {size:text}' },
  'ui.drawing.asTable': { en: 'The same as a table', es: 'Lo mismo en una tabla' },

  'ui.unknownText': {
    en: 'This page is older than the office and has no words for “{code:text}”. Reload it.',
    es: 'Esta página es anterior a la oficina y no tiene palabras para “{code:text}”. Recárguela.',
  },
  'ui.broken.title': { en: 'This part of the page stopped', es: 'Esta parte de la página se detuvo' },
  'ui.broken.body': {
    en: 'What the office has is safe. Try again; if it stops a second time, reload the page and tell the owner what you did last.',
    es: 'Lo que tiene la oficina está a salvo. Intente otra vez; si vuelve a detenerse, recargue la página y diga al dueño qué hizo último.',
  },
  'ui.missing.title': { en: 'There is no page here', es: 'Aquí no hay ninguna página' },
  'ui.missing.body': {
    en: 'The address may be misspelt, or what stood here belongs to somebody else.',
    es: 'La dirección puede estar mal escrita, o lo que había aquí es de otra persona.',
  },
  'ui.missing.home': { en: 'Go to your home page', es: 'Ir a su página de inicio' },
});
