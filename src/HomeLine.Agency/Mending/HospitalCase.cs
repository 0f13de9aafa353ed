using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;

namespace HomeLine.Agency.Mending;

/// <summary>A patient went to hospital: her visits are out of the week already; the time that became free is offered, not applied. Pure.</summary>
internal static class HospitalCase
{
    /// <param name="entry">What was told.</param>
    /// <param name="lifted">The visits that were taken out.</param>
    /// <param name="setting">The week without them.</param>
    public static MendOffer Offer(InHospital entry, ImmutableArray<WeekVisit> lifted, MendSetting setting)
    {
        string name = setting.People.Name(entry.Patient);
        return new MendOffer
        {
            Facts =
            [
                $"{name} is on hold from {DayWords.Day(entry.From ?? setting.Agency.Today)}. Clocks run on; planning has stopped; on return every item gets a date or none.",
                .. entry.From is null ? ["The first day is unknown: today counts until somebody knows better."] : ImmutableArray<string>.Empty,
                .. lifted.Select(v => $"{DayWords.When(v)} with {setting.People.NurseName(v.Nurse)} is taken out: {v.Minutes} min are free."),
                .. lifted.IsEmpty ? ["No visit lay ahead."] : ImmutableArray<string>.Empty,
            ],
            Answers = FreedCase.Answers(setting, [.. lifted.SelectMany(v => new[] { v.Nurse, v.Second }.OfType<string>())]),
            ToTell = LiftedVisits.Told(entry.Patient, lifted, setting.People),
        };
    }
}
