using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Counting;

/// <summary>Whether a civil day counts for a line: it is in, the patient is at home, and the port is in use where policy asks for it.</summary>
internal sealed class DayCounting
{
    private readonly PatientCare _care;
    private readonly IReadOnlyList<LineEvent> _ledger;
    private readonly List<(LocalDate From, LocalDate? Home)> _stays = [];
    private readonly bool _endDays;
    private readonly bool _idlePorts;

    public DayCounting(PatientCare care, IReadOnlyList<LineEvent> ledger, PolicyBook policy)
    {
        (_care, _ledger) = (care, ledger);
        _endDays = policy.ValueOf(RuleIds.CountEndDay, care.CareStartedOn) == 1;
        _idlePorts = policy.ValueOf(RuleIds.CountIdlePort, care.CareStartedOn) == 1;
        foreach (var entry in ledger)
            if (entry.Kind == LineEventKind.AdmittedToHospital && !_stays.Exists(stay => stay.Home is null)) _stays.Add((DayOf(entry), null));
            else if (entry.Kind == LineEventKind.ReturnedHome && _stays.FindIndex(stay => stay.Home is null) is >= 0 and var open)
                _stays[open] = (_stays[open].From, DayOf(entry));
    }

    public bool Counts(Line line, LocalDate day) =>
        day >= First(line) && IsBeforeEnd(End(line), day) && IsAtHome(day) && (_idlePorts || line.Kind != LineKind.Port || IsAccessed(line, day));

    public int? Dwell(Line line, LocalDate last) =>
        Inserted(line) is { } placed && placed <= last ? Period.DaysBetween(placed, End(line) is { } out_ && out_ < last ? out_ : last) : null;

    private LocalDate First(Line line) => LocalDate.Max(_care.CareStartedOn, Inserted(line) ?? _care.CareStartedOn);

    private LocalDate? Inserted(Line line) => Find(line, LineEventKind.Inserted) ?? line.InsertedOn;

    private LocalDate? End(Line line) => Find(line, LineEventKind.Removed) ?? Find(line, LineEventKind.Exchanged)?.PlusDays(_endDays ? -1 : 0);

    private LocalDate? Find(Line line, LineEventKind kind)
    {
        foreach (var entry in _ledger)
            if (entry.Line == line.Id && entry.Kind == kind) return DayOf(entry);
        return null;
    }

    private bool IsBeforeEnd(LocalDate? end, LocalDate day) => end is not { } last || (_endDays ? day <= last : day < last);

    /// <summary>The day of coming home counts; the day of admission as the day of removal does.</summary>
    private bool IsAtHome(LocalDate day)
    {
        foreach (var (from, home) in _stays)
            if ((_endDays ? day > from : day >= from) && (home is not { } back || day < back)) return false;
        return true;
    }

    private bool IsAccessed(Line line, LocalDate day)
    {
        var accessed = false;
        foreach (var entry in _ledger)
        {
            if (entry.Line != line.Id || DayOf(entry) > day) continue;
            if (entry.Kind == LineEventKind.PortAccessed) accessed = true;
            else if (entry.Kind == LineEventKind.PortDeaccessed && DayOf(entry) < day) accessed = false;
        }

        return accessed;
    }

    private LocalDate DayOf(LineEvent entry) => entry.Performed?.Date ?? entry.RecordedAt.InZone(_care.Zone).Date;
}
