import type { Job } from '../../domain/job.ts'
import { dayInWords } from '../days.ts'
import { box, lines, ticks, wideBox, yesNo } from './form-fields.ts'
import type { FormPart } from './form-view.ts'
import { formChoices } from './form-words.ts'

/** What is asked once of a job: who, where, and the heating system. */
export function houseParts(job: Job | null): readonly FormPart[] {
  return [...whoAndWhere(job), ...systemParts(job)]
}

function whoAndWhere(job: Job | null): readonly FormPart[] {
  return [
    {
      title: 'The job',
      fields: [wideBox('What the job is', job?.title), box('Your reference', job?.reference)],
    },
    {
      title: 'The customer',
      fields: [
        box('Name', job?.customer.name),
        box('Telephone', job?.customer.phone),
        box('Email', job?.customer.email),
        wideBox('Address, line by line', job?.customer.addressLines.join(', ')),
      ],
    },
    {
      title: 'The site',
      fields: [
        wideBox('Address of the site, line by line', job?.site.addressLines.join(', ')),
        box('Distance one way (km)', job?.site.travelKm),
        box('Floors above the ground floor', job?.site.upperFloors),
      ],
    },
  ]
}

function systemParts(job: Job | null): readonly FormPart[] {
  const survey = job?.survey
  const system = survey?.system
  return [
    {
      title: 'Temperatures',
      fields: [
        box('Flow temperature (°C)', system?.flowC),
        box('Return temperature (°C)', system?.returnC),
        box('Coldest day outside (°C)', survey?.outsideC),
      ],
    },
    {
      title: 'The water',
      fields: [
        ticks('System', formChoices.systemKind, system?.kind),
        ticks('Before the work', formChoices.drain, system?.drain),
        box('Share let out (0 to 1)', system?.drainedShare),
        box('Water in the system (litres)', system?.contentLitres),
        box('Boiler output (kW)', system?.boilerKW),
        yesNo('Flush the system with a cleaner', system?.flush),
      ],
    },
    {
      title: 'The house',
      fields: [
        box('Surveyed on', survey === undefined ? null : dayInWords(survey.surveyedOn)),
        box('Surveyed by', survey?.surveyedBy),
        box('Year built', survey?.builtYear),
        yesNo('Children, or people who would not pull back from a hot surface', survey?.frailOrChildren),
        yesNo('There will be hot work (soldering)', survey?.hotWork),
        yesNo('People live in the house while the work goes on', survey?.occupied),
        lines('Notes from the survey', survey?.notes, 3),
      ],
    },
  ]
}
