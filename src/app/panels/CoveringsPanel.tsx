import { oneLine } from '../../documents/words.ts';
import { planCoveringLaid } from '../../plan/edits/settings.ts';
import type { Covering } from '../../plan/plan.ts';
import { ChoiceField } from '../parts/ChoiceField.tsx';
import { panelHeir } from '../parts/focus.ts';
import { nameText } from '../parts/format.ts';
import { SourceText } from '../parts/SourceNote.tsx';
import { Stretches } from '../parts/Stretches.tsx';
import { usePlanResolved } from '../state/hooks.ts';
import { commit } from '../state/planStore.ts';
import type { PanelProps } from './panel.ts';
import { AgreementGroup } from './tiles/AgreementGroup.tsx';
import { AgreementWorking } from './tiles/AgreementWorking.tsx';
import { GroutGroup } from './tiles/GroutGroup.tsx';
import { GroutMisses } from './tiles/GroutMisses.tsx';
import { TilesGroup } from './tiles/TilesGroup.tsx';

export const coveringWords: Readonly<Record<Covering, string>> = {
  'stone-or-ceramic': 'Stone or ceramic',
  resilient: 'Resilient',
  timber: 'Timber',
  textile: 'Textile',
  none: 'None',
};

const choices = (Object.keys(coveringWords) as Covering[]).map((value) => ({ value, words: coveringWords[value] }));

/** About the height of a room's choice, px. */
const roomRowPx = 36;

/** What lies on the screed: for the whole floor at once or room by room, the tiles and how joints lie in their grout lines. */
export function CoveringsPanel({ result, onChoose }: PanelProps) {
  const { rooms } = usePlanResolved();
  const tiled = result?.analysis.tiles == null ? null : result;
  const shared = new Set(rooms.map((room) => room.covering));
  const [only] = shared;
  const mixed = { value: 'mixed' as const, words: 'Not the same' };
  return (
    <>
      <section ref={panelHeir} className="group">
        <ChoiceField
          label="All rooms"
          value={shared.size === 1 && only !== undefined ? only : 'mixed'}
          choices={shared.size === 1 ? choices : [mixed, ...choices]}
          onChange={(covering) => {
            if (covering === 'mixed') return;
            commit(`All rooms ${coveringWords[covering].toLowerCase()}`, (file) =>
              planCoveringLaid(
                file,
                rooms.map((room) => room.id),
                covering,
              ),
            );
          }}
          source={[...new Set(rooms.map((room) => room.limitSources.areaM2))].map((source) => (
            <SourceText key={source} source={source} />
          ))}
        />
        <p className="small quiet">The covering decides which limits a bay is held to, and which joints are sealed.</p>
      </section>
      <TilesGroup result={result} />
      {tiled !== null && (
        <>
          <GroutGroup result={tiled} />
          <AgreementGroup />
        </>
      )}
      <section className="group">
        <h3>Covering room by room</h3>
        <Stretches count={rooms.length} rowPx={roomRowPx}>
          {(i) => {
            const room = rooms[i];
            return (
              room && (
                <RoomCovering
                  key={room.id}
                  id={room.id}
                  name={room.name}
                  label={oneLine(room.name)}
                  covering={room.covering}
                />
              )
            );
          }}
        </Stretches>
      </section>
      {tiled !== null && <GroutMisses result={tiled} onChoose={onChoose} />}
      <AgreementWorking />
    </>
  );
}

interface RoomCoveringProps {
  readonly id: string;
  readonly name: string;
  readonly label: string;
  readonly covering: Covering;
  readonly wide?: boolean;
}

export function RoomCovering({ id, name, label, covering, wide = false }: RoomCoveringProps) {
  return (
    <ChoiceField
      label={label}
      wide={wide}
      value={covering}
      choices={choices}
      onChange={(next) =>
        commit(`${nameText(name)} ${coveringWords[next].toLowerCase()}`, (file) => planCoveringLaid(file, [id], next))
      }
    />
  );
}
