using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using NodaTime;

namespace HomeLine.Web.Layout;

/// <summary>The branch as every working page needs it: its name, its zone, and what now is there. Handed down by the layout.</summary>
public sealed class Branch(AgencyProfile profile, AgencyClock clock)
{
    public string Name => profile.Name;

    public bool IsDemo => profile.IsDemo;

    public string EmergencyNumber => profile.EmergencyNumber;

    public string OnCallPhone => profile.OnCallPhone;

    public DateTimeZone Zone => profile.Zone;

    public Instant Now => clock.Now(profile);

    public LocalDate Today => Now.InZone(Zone).Date;
}
