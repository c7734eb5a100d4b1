import type { ReactNode } from 'react'
import { hazardWords } from '../../shared-schemas/hazard-words.ts'
import type { Job } from '../../shared-schemas/jobs.ts'
import { FittingNotes } from '../fitting-notes/fitting-notes.tsx'
import { CodeBars } from '../scanning/code-bars.tsx'
import { wordModels } from './job-words.ts'

/** The job on paper, for the van: seen only when it is printed. */
export function JobSheet({ job }: { readonly job: Job }) {
  const families = [...new Set([...job.needs, ...job.parts].map(({ family }) => family))]
  return (
    <section className="job-sheet" aria-label="Job sheet" aria-hidden="true">
      <h2 className="job-sheet__title">
        Job <span className="number">{job.job}</span>
      </h2>
      <CodeBars code={job.job} />
      <dl className="job-sheet__facts">
        <Fact name="Appliance">
          <span className="number">
            {job.brand} {job.model}
          </span>
          <br />
          {wordModels(job)}
        </Fact>
        <Fact name="Serial, made">
          {job.serial ?? '____________'}, {job.made ?? '________'}
        </Fact>
        <Fact name="Volts, hertz, watts">
          {job.volts ?? '______'}, {job.hertz ?? '______'}, {job.watts ?? '______'}
        </Fact>
        <Fact name="Symptom">{job.symptom}</Fact>
        <Fact name="Date, van">
          {job.date}, {job.van ?? 'no van'}
        </Fact>
        <Fact name="Customer's reference">{job.customer ?? '____________'}</Fact>
      </dl>
      <ul className="job-sheet__caution">
        {listCautions(job).map(text => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <table className="stock-table">
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">What it is</th>
            <th scope="col">Taken</th>
            <th scope="col">Fitted</th>
            <th scope="col">Back</th>
          </tr>
        </thead>
        <tbody>
          {job.parts.map(({ partNumber, family, description, taken, fitted, broughtBack }) => (
            <tr key={partNumber}>
              <th scope="row" className="number">
                {partNumber}
              </th>
              <td>{description === '' ? family : description}</td>
              <td className="job-sheet__box">{taken > 0 ? taken : ''}</td>
              <td className="job-sheet__box">{fitted > 0 ? fitted : ''}</td>
              <td className="job-sheet__box">{broughtBack > 0 ? broughtBack : ''}</td>
            </tr>
          ))}
          {job.needs
            .filter(({ isMet }) => !isMet)
            .map(({ family, familyName, partNumber, quantity }) => (
              <tr key={`${family} ${partNumber}`}>
                <th scope="row" className="number">
                  {partNumber ?? '____________'}
                </th>
                <td>
                  needed: {quantity} × {familyName}
                </td>
                <td className="job-sheet__box" />
                <td className="job-sheet__box" />
                <td className="job-sheet__box" />
              </tr>
            ))}
        </tbody>
      </table>
      <FittingNotes families={families} />
      <h3>Readings</h3>
      <table className="stock-table">
        <tbody>
          {readings.map(name => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className="job-sheet__line" />
            </tr>
          ))}
        </tbody>
      </table>
      <h3>What was wrong, and what was done</h3>
      <p className="job-sheet__room" />
      <p className="job-sheet__sign">Repaired by ______________ on ____________ Customer ______________</p>
    </section>
  )
}

/** What is written down before leaving, whatever was repaired (common practice). Limits are those of the maker and local codes. */
const readings = [
  'Earth continuity, Ω',
  'Insulation resistance, MΩ',
  'Run watched; leaks looked for',
  'Other',
]

/** What is minded on any appliance, and what the parts of this job say besides. */
function listCautions({ parts }: Job): string[] {
  const ofParts = parts.flatMap(({ cautions }) => cautions.map(({ text }) => text))
  return [...new Set([hazardWords.mains ?? '', hazardWords.water ?? '', ...ofParts])]
}

function Fact({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <div className="job-sheet__fact">
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  )
}
