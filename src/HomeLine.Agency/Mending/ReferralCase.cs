using System.Collections.Immutable;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>
/// Can we take it? The checklist first; then who could make the first visit before the dose, and the other ways, each with who decides. A yes is never given by
/// the program: an option that is chosen is kept with the referral, and the visit is planned once the patient is on the roster. Pure.
/// </summary>
internal static class ReferralCase
{
    /// <summary>How the title of every referral begins; held places are found by it.</summary>
    public const string TitleBegins = "Can we take ";

    private const string NewPatient = "referral";
    private const string TaskId = "start of care";

    public static Refusal? Fault(ReferralFacts referral, AgencyAtHand agency)
    {
        if (string.IsNullOrWhiteSpace(referral.Name)) return new Refusal("referral-name-missing", "It is not said who is referred.", "Write the name.");
        if (referral.Home is { } home && (home.X < 0 || home.Y < 0 || home.X > agency.Roster.Map.Width || home.Y > agency.Roster.Map.Height))
            return new Refusal("referral-off-map", "The home lies outside the agency's map.", "Check the address; outside the area the answer is no.");
        return referral.Line == LineKind.DialysisCatheter
            ? new Refusal("referral-out-of-scope", "A dialysis catheter is not for our use.", "Decline, and say who may take it.")
            : null;
    }

    public static MendOffer Offer(ReferralFacts referral, MendSetting setting)
    {
        ImmutableArray<string> missing = referral.Missing();
        ImmutableArray<string> facts = [.. missing.Select(m => $"Ask: {m}"), .. Dates(referral, setting)];
        if (referral.Home is null || referral.HomeAt is null || referral.Line is null)
            return new MendOffer { Facts = facts, Answers = [Decline("A")] };
        LocalDateTime from = Later(referral.HomeAt.Value, referral.SuppliesAt);
        LocalDateTime by = referral.NextDoseAt is { } dose ? dose : from.PlusHours((int)setting.Agency.Files.Policy.ValueOf("initialvisit.max", setting.Agency.Today));
        bool beforeDose = referral.NextDoseAt is not null;
        NewVisitAnswers soon = Find(referral, setting, from, by, beforeDose);
        NewVisitAnswers tomorrow = Find(referral, setting, from.Date.PlusDays(1).At(new LocalTime(8, 0)), from.Date.PlusDays(1).At(new LocalTime(18, 0)), false);
        var options = new List<MendAnswer>();
        if (beforeDose && tomorrow.Answers.MinBy(a => a.Price.Overtime) is { } next)
        {
            options.Add(Pencilled(next, "", missing, referral, setting) with
            {
                Title = $"Ask the hospital to give the {DayWords.Time(referral.NextDoseAt!.Value.TimeOfDay)} dose and to discharge the next morning; then {next.Title}",
                Decider = "The hospital's practitioner agrees.",
            });
        }

        options.AddRange(soon.Answers.OrderBy(a => a.Price.Families).DistinctBy(a => a.Title).Take(2).Select(a => Pencilled(a, $"{a.Title}, second visit the next day", missing, referral, setting)));
        // Without overtime others would have to move, up to three: looked for so that nobody has to, and never first.
        bool needsOvertime = soon.Answers.Any(a => a.Price.Overtime > 0);
        MendAnswer? moving = needsOvertime
            ? Find(referral, setting, from, by, beforeDose, overtime: false).Answers.Where(a => a.Price.Families > 0).MinBy(a => a.Price.Families)
            : null;
        if (moving is not null && options.All(o => !o.Title.StartsWith(moving.Title, StringComparison.Ordinal)))
            options.Add(Pencilled(moving, $"{moving.Title}, only if {DayWords.Count(moving.Price.Families, "family moves", "families move")}: not recommended", missing, referral, setting));
        options.Add(Decline(""));
        return new MendOffer
        {
            Facts = facts,
            Answers = [.. options.Select((o, i) => o with { Key = ((char)('A' + i)).ToString() })],
            RuledOut = [.. soon.RuledOut, .. needsOvertime && moving is null ? ["Without overtime nobody has room in time, even if up to three families moved."] : ImmutableArray<string>.Empty],
        };
    }

    private static NewVisitAnswers Find(ReferralFacts referral, MendSetting setting, LocalDateTime from, LocalDateTime by, bool endsBefore, bool overtime = true)
    {
        AgencyAtHand agency = setting.Agency;
        var patient = new Patient
        {
            Id = new PatientId(NewPatient),
            Name = referral.Name.Trim(),
            CareStartedOn = from.Date,
            Home = referral.Home!.Value,
            State = referral.State.Length > 0 ? referral.State : agency.Roster.Map.NearestTown(referral.Home.Value)!.State,
            ZoneId = agency.Roster.Profile.ZoneId,
        };
        AgencyRoster with = agency.Roster with { Patients = [.. agency.Roster.Patients, patient] };
        int Value(string rule) => (int)agency.Files.Policy.ValueOf(rule, agency.Today);
        int setup = Value("minutes.startofcare.setup"), work = Value("minutes.startofcare.work");
        var line = new Line { Id = new LineId(NewPatient), Patient = patient.Id, Kind = referral.Line!.Value, Lumens = [] };
        int latest = setting.Calendar.Minute(by) - (endsBefore ? setup + Value("firstdose.before.min") : 0);
        int opens = Math.Max(setting.Calendar.Minute(from), setting.Now);
        if (latest <= opens || opens >= setting.Calendar.End) return new NewVisitAnswers([], []);
        ImmutableArray<string> skills =
            [.. CareSkills.Of(CareItem.Dressing, line, null, patient).Append(CareKinds.StartOfCare).Concat(referral.FirstDoseGiven ? [] : ["FD"]).Distinct().Order(StringComparer.Ordinal)];
        var task = new CareTask
        {
            Id = TaskId,
            Patient = NewPatient,
            Label = "start of care",
            Opens = opens,
            LateFrom = latest + 1,
            HardLatest = latest,
            SetupMinutes = setup,
            WorkMinutes = work,
            Skills = skills,
            Kinds = CareKinds.Of(skills, setup + work, agency.Files.Policy, agency.Today),
            Critical = true,
            Weight = 1,
            Safety = true,
        };
        return NewVisitAnswers.Of(agency with { Roster = with, Files = CareFiles.Of(with) }, setting.Week, task, [], overtime: overtime);
    }

    /// <summary>What follows from the dates alone.</summary>
    private static IEnumerable<string> Dates(ReferralFacts referral, MendSetting setting)
    {
        AgencyAtHand agency = setting.Agency;
        if (referral is { PlacedOn: { } placed, Dressing: { } dressing })
        {
            bool gauze = dressing is DressingKind.Gauze or DressingKind.GauzeUnderFilm;
            int days = (int)agency.Files.Policy.ValueOf(gauze ? "dressing.first.gauze.max" : "dressing.first.film.max", agency.Today);
            yield return $"The first dressing is due on {DayWords.Day(placed.PlusDays(days))}: {CareLabels.Of(dressing)} since {DayWords.Day(placed)}.";
        }

        if (referral.HomeAt is { } home)
        {
            int hours = (int)agency.Files.Policy.ValueOf("initialvisit.max", agency.Today);
            yield return $"The first visit is due within {hours} hours of coming home: by {DayWords.Moment(home.PlusHours(hours))}.";
            if (referral.NextDoseAt is { } dose && dose < home.PlusHours(hours))
                yield return $"The dose at {DayWords.Moment(dose)} makes it sooner{(referral.SomebodyLearns ? ": who learns it needs a nurse beside them" : ": nobody at home can give it")}.";
            if (referral.SuppliesAt is { } supplies && supplies > home)
                yield return $"Nobody is sent before {DayWords.Moment(supplies)}, when drug and kit are in the home.";
        }
    }

    private static MendAnswer Pencilled(MendAnswer answer, string title, ImmutableArray<string> missing, ReferralFacts referral, MendSetting setting)
    {
        // The patient is not on the roster: the visit itself is not put into the week, and nobody is told of it yet. Those who make room for it are moved once
        // somebody confirms the answer, and are told.
        ImmutableArray<VisitChange> moves = [.. answer.Changes.Where(c => c.Before is not null)];
        return answer with
        {
            Holds = Place(answer, referral, setting),
            Title = title.Length > 0 ? title : answer.Title,
            Changes = moves,
            ToTell = ToTell(answer, moves, referral, setting),
            Decider = answer.Decider.Length > 0 ? $"{answer.Decider} The clinical manager takes the referral." : "The clinical manager takes the referral.",
            Cautions =
            [
                moves.IsEmpty
                    ? "The place is held until the day is too near to move visits, or until somebody lets it go."
                    : $"{DayWords.Count(moves.Length, "visit makes", "visits make")} room for it, once this is chosen; then the place is held until the day is too near to move visits, or until somebody lets it go. Letting it go moves nobody back.",
                .. answer.Price.Families > 0 ? ["It moves families who were told a time; not recommended while another way is open."] : ImmutableArray<string>.Empty,
                .. missing.IsEmpty ? [] : ImmutableArray.Create($"{DayWords.Count(missing.Length, "question is", "questions are")} still open."),
            ],
        };
    }

    /// <summary>The families who hear of another time, and the nurses whose visits move.</summary>
    private static ImmutableArray<PersonToTell> ToTell(MendAnswer answer, ImmutableArray<VisitChange> moves, ReferralFacts referral, MendSetting setting)
    {
        if (moves.IsEmpty) return [];
        ILookup<string, VisitChange> byNurse = moves
            .SelectMany(c => new[] { c.Before!.Nurse, c.Before.Second, c.After?.Nurse, c.After?.Second }.OfType<string>().Distinct().Select(n => (Nurse: n, Change: c)))
            .ToLookup(n => n.Nurse, n => n.Change);
        return
        [
            .. answer.ToTell.Where(p => p.Nurse is null && !p.Who.Contains(referral.Name.Trim(), StringComparison.Ordinal)),
            .. byNurse.Select(n => setting.People.Nurse(n.Key, string.Join(" ", n.Select(c => c.Words)))),
        ];
    }

    private static HeldPlace? Place(MendAnswer answer, ReferralFacts referral, MendSetting setting) => answer.Changes is [{ Before: null, After: { } visit }, ..]
        ? new HeldPlace(
            visit.Nurse, visit.Second, visit.Day, visit.Start, visit.Minutes, referral.Home!.Value,
            visit.Day.At(visit.Start).PlusMinutes(-setting.Standing.Problem.Rules.FrozenAheadMinutes).InZoneLeniently(setting.Calendar.Zone).ToInstant())
        : null;

    private static MendAnswer Decline(string key) => new()
    {
        Key = key,
        Title = "Decline, and say so now",
        Decider = "The clinical manager declines.",
    };

    private static LocalDateTime Later(LocalDateTime one, LocalDateTime? other) => other is { } o && o > one ? o : one;
}
