import { catalogue } from '../../catalogue.ts';

export const photoPages = catalogue({
  'photos.loading': { en: 'the photos', es: 'las fotos' },
  'photos.none': { en: 'Photos and notes of this job', es: 'Fotos y notas de este trabajo' },
  'photos.noneWhy': {
    en: 'What is seen before it is covered: old cracks, marks, joints. The office and the customer can look later.',
    es: 'Lo que se ve antes de taparlo: grietas viejas, marcas, uniones. La oficina y el cliente lo pueden ver después.',
  },
  'photos.fromCustomer': { en: 'From the customer', es: 'Del cliente' },
  'photos.fromCustomerTitle': { en: 'What the customer saw', es: 'Lo que vio el cliente' },
  'photos.unshown': { en: 'This picture cannot be shown here. Save it as it came', es: 'Esta imagen no se puede mostrar aquí. Guárdela como llegó' },
  'photos.altVideo': { en: 'Video of {what:text}, {at:dateTime}', es: 'Video de {what:text}, {at:dateTime}' },
  'photos.addNote': { en: 'Add a photo note', es: 'Agregar una foto con nota' },
  'photos.count': { en: '{n:plural|# photo|# photos}', es: '{n:plural|# foto|# fotos}' },
  'photos.site': { en: 'The site', es: 'La obra' },
  'photos.takenHere': { en: 'Taken {at:dateTime}', es: 'Tomada {at:dateTime}' },
  'photos.isForCustomer': { en: 'The customer may see it', es: 'El cliente la puede ver' },
  'photos.showAll': { en: 'Show all {n:count}', es: 'Mostrar las {n:count}' },
  'photos.camera': { en: 'With the camera', es: 'Con la cámara' },
  'photos.store': { en: 'Taken before', es: 'Tomada antes' },
  'photos.keep': { en: 'Keep this photo', es: 'Guardar esta foto' },
});
