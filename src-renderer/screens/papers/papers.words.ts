/** What the page of papers says. */
export const words = {
  quote: {
    title: 'The quote',
    says: 'For the customer: scope, price, terms. Cost and margin are not in it.',
    make: 'Make the quote PDF',
  },
  pickList: {
    title: 'The pick list',
    says: 'For the van: what to buy where, what to take, how to cut the pipe.',
    make: 'Make the pick list PDF',
  },
  setOut: {
    title: 'The set-out sheet',
    says: 'For the wall: one page a swap, where to drill and how deep.',
    make: 'Make the set-out PDF',
  },
  surveyForm: {
    title: 'The survey form',
    says: 'For the site: what the job says already, with room to write and sketch.',
  },
  jobFile: {
    title: 'The job as a file',
    says: 'To keep or pass on: the survey with its photos, issued quotes and what came after.',
    make: 'Make the job file',
    notMade: 'The job file is not made',
    save: 'Save the job file',
  },
  none: {
    title: 'No papers yet',
    says: 'They are made from swaps: one emitter for another on one wall.',
    add: 'Add a swap',
  },
  wantsFirm: {
    title: 'Who is the quote from?',
    says: 'Your firm’s name and address stand at its head.',
    give: 'Give your firm’s details',
  },
  notMade: 'Not made',
  size: (pages: number, kilobytes: number) => `${pages === 1 ? '1 page' : `${pages} pages`}, ${kilobytes} kB`,
  save: 'Save a copy',
  look: 'Look at it',
  saveThis: 'Save a copy of this one',
  place: {
    show: 'Show in folder',
    showNamed: (file: string) => `Show in folder: ${file}`,
    notShown: 'Not shown',
    copied: 'Copied.',
    byHand: 'Mark it and copy it by hand.',
    keptAt: (path: string) => `Kept at ${path}`,
    copy: 'Copy the place',
    copyNamed: (file: string) => `Copy the place: ${file}`,
  },
  toLookAt: (paper: string) => `${paper}, to look at`,
} as const
