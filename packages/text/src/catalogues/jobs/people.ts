import { catalogue } from '../../catalogue.ts';

export const jobPeople = catalogue({
  'jobs.customer.erased': { en: 'Erased at the wish of the customer', es: 'Borrado a petición del cliente' },
});
