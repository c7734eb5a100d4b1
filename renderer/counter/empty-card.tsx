import type { Output } from '../../shared-schemas/index.ts'

/** Where makers usually put the plate, appliance by appliance: common practice, to be read out on the telephone. */
const usualPlaces = [
  ['Dishwasher', 'on the edge of the door, seen when it is open'],
  ['Washer', 'inside the door rim, or behind the filter flap'],
  ['Dryer', 'inside the door rim, or on the back'],
  ['Oven', 'on the frame, seen when the door is open'],
  ['Hob', 'underneath; often also on the papers that came with it'],
  ['Fridge', 'inside, on the wall beside the bottom drawer'],
  ['Microwave', 'inside the door frame, or on the back'],
  ['Vacuum', 'underneath, or behind the dust bag'],
] as const

/** What to do first, and where the customer will find the plate. */
export function EmptyCard({ summary }: { readonly summary: Output<'catalogue.read-summary'> | undefined }) {
  return (
    <section className="empty-card" aria-labelledby="empty-card-title">
      <h2 id="empty-card-title" className="empty-card__title">
        Type the model number from the rating plate.
      </h2>
      <p className="empty-card__lead">
        Any part of it will do: the answer comes as soon as it is safe, and if it is not, one reading is asked
        for.
        {summary !== undefined &&
          ` The catalogue holds ${figure.format(summary.models)} models of ${summary.brands.length} makers and ${figure.format(summary.parts)} parts.`}
      </p>
      <h3 className="empty-card__where">Where the plate usually is</h3>
      <dl className="empty-card__places">
        {usualPlaces.map(([appliance, place]) => (
          <div key={appliance}>
            <dt>{appliance}</dt>
            <dd>{place}</dd>
          </div>
        ))}
      </dl>
    </section>
  )
}

const figure = new Intl.NumberFormat('en')
