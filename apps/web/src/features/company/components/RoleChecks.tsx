import { memberRoles, type MemberRole } from '@yardfall/contracts';
import { CheckField } from '../../../components/Field.tsx';
import { useText } from '../../../lib/reader.tsx';

interface RoleChecksProps {
  readonly roles: readonly MemberRole[];
  readonly onChange: (roles: MemberRole[]) => void;
}

/** A person may hold several roles; in a small firm the owner also estimates and digs. */
export function RoleChecks({ roles, onChange }: RoleChecksProps) {
  const { t } = useText();
  return (
    <fieldset>
      <legend className="field-legend">{t('identity.member.roles')}</legend>
      {memberRoles.map((role) => (
        <CheckField key={role} label={t(`identity.role.${role}`)} checked={roles.includes(role)}
          onChange={(event) => onChange(event.target.checked ? [...roles, role] : roles.filter((r) => r !== role))} />
      ))}
    </fieldset>
  );
}
