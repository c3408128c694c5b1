import type { ChoicesAnswer, ShutdownAnswer } from '@seatwell/contract';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { peopleQuery } from '../../app/reads.ts';
import { newId } from '../../app/send-command.ts';
import { useCommand } from '../../app/use-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Combobox } from '../../ui/combobox.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './setup.module.css';

interface Props {
  readonly crew: ChoicesAnswer['crews'][number] | undefined;
  readonly shutdown: ShutdownAnswer;
  readonly onClose: () => void;
}

/** A crew and its people; listing a crew again under its id changes it. */
export function CrewDialog({ crew, shutdown, onClose }: Props) {
  const text = useText('setup');
  const people = useQuery(peopleQuery);
  const list = useCommand('crew-listed');
  const [crewId] = useState(() => crew?.crewId ?? newId());
  const [code, setCode] = useState(crew?.code ?? '');
  const [company, setCompany] = useState(crew?.company ?? '');
  const [shift, setShift] = useState(crew?.shift ?? '');
  const [personIds, setPersonIds] = useState<readonly string[]>(crew?.persons.map((person) => person.personId) ?? []);
  const rows = people.data?.rows ?? [];
  const nameOf = (personId: string) =>
    rows.find((person) => person.personId === personId)?.name ??
    crew?.persons.find((person) => person.personId === personId)?.name ??
    text('name-erased');
  const complete = code.trim() !== '' && company.trim() !== '';
  const send = () =>
    list.mutate(
      {
        subjectId: crewId,
        payload: {
          crewId,
          code: code.trim(),
          company: company.trim(),
          shift: shift === '' ? null : shift,
          personIds: [...personIds],
        },
      },
      { onSuccess: onClose },
    );
  return (
    <Dialog
      open
      onOpenChange={(open) => open || onClose()}
      title={crew ? text('change-crew', { code: crew.code }) : text('add-crew')}
      actions={
        <>
          <Button onClick={onClose}>{text('cancel')}</Button>
          <Button
            kind="primary"
            busy={list.isPending}
            disabledReason={complete ? undefined : text('crew-incomplete')}
            onClick={send}
          >
            {text('save')}
          </Button>
        </>
      }
    >
      <div className={styles.panel}>
        <div className={styles.row}>
          <TextField label={text('code')} value={code} onChange={setCode} />
          <TextField label={text('company')} value={company} onChange={setCompany} />
          <Select
            label={text('shift')}
            optional
            value={shift}
            onChange={setShift}
            options={shutdown.shifts.map((each) => ({ value: each.name, label: each.name }))}
          />
        </div>
        <Combobox
          label={text('add-person')}
          value=""
          onChange={(personId) => setPersonIds((current) => [...new Set([...current, personId])])}
          options={rows
            .filter((person) => person.erasedAt === null && !personIds.includes(person.personId))
            .map((person) => ({
              value: person.personId,
              label: person.name ?? text('name-erased'),
              detail: [person.company, person.trade].filter(Boolean).join(', '),
            }))}
        />
        <ul className={styles.people} aria-label={text('people')}>
          {personIds.map((personId) => (
            <li key={personId}>
              {nameOf(personId)}{' '}
              <Button
                kind="quiet"
                label={text('remove-person', { name: nameOf(personId) })}
                onClick={() => setPersonIds((current) => current.filter((each) => each !== personId))}
              >
                {text('remove')}
              </Button>
            </li>
          ))}
        </ul>
        <ErrorNotice error={people.error ?? list.error} />
      </div>
    </Dialog>
  );
}
