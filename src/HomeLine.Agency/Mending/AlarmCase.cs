using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.RedFlags;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>
/// A pump alarm: the phone script first, then a visit for it alone. A medicine that must not stop and an alarm that was not ended never lead to a time:
/// that call is for a licensed person at once. Pure.
/// </summary>
internal static class AlarmCase
{
    private const string TaskId = "pump";

    public static Refusal? Fault(PumpAlarm entry) => entry.Solved is null
        ? new Refusal("script-first", "The phone script was not read yet.", "Read it, then say whether the alarm ended.")
        : null;

    /// <summary>The screen's answers, with what the alarm itself says: a heart infusion whose alarm did not end may have stopped.</summary>
    public static ImmutableDictionary<string, ScreenAnswer> Answers(PumpAlarm entry, ScreenContext context) =>
        entry.Solved == false && context.InfusionMustNotStop && entry.Answers.GetValueOrDefault("heart-infusion-stopped") is ScreenAnswer.No or ScreenAnswer.NotAsked
            ? entry.Answers.SetItem("heart-infusion-stopped", ScreenAnswer.DoNotKnow)
            : entry.Answers;

    public static MendOffer Offer(PumpAlarm entry, MendSetting setting, ScreenContext context)
    {
        AgencyAtHand agency = setting.Agency;
        Patient patient = agency.Roster.Patients.First(p => p.Id == entry.Patient);
        ImmutableArray<string> script = PumpScript.For(entry.Alarm, context.InfusionMustNotStop);
        if (entry.Solved == true)
        {
            Instant back = agency.Now + Duration.FromMinutes((int)agency.Files.Policy.ValueOf("alarm.callback", agency.Today));
            return new MendOffer
            {
                Aloud = ["Call again at once if it sounds again, or if anything about the patient changes."],
                Facts = ["The alarm ended on the phone. No visit, and no clock is touched.", .. context.InfusionMustNotStop ? ["The medicine must not stop: the clinical manager hears of every alarm."] : ImmutableArray<string>.Empty],
                ToTell =
                [
                    setting.People.Family(entry.Patient, "Call back: does the pump still run without an alarm?", back),
                    .. context.InfusionMustNotStop ? [setting.People.ClinicalManager($"{patient.Name}: pump alarm, ended on the phone.")] : ImmutableArray<Reports.PersonToTell>.Empty,
                ],
            };
        }

        Line line = agency.Roster.Lines.First(l => l.Id == entry.Line);
        string label = "pump check after an alarm";
        NewVisitAnswers found = NewVisitAnswers.Of(agency, setting.Week, Task(agency, setting, patient, line, label), [new VisitCare($"{entry.Patient.Value}|PumpCheck|{entry.Line.Value}||", label)]);
        return new MendOffer
        {
            Aloud = [.. script, "Until the nurse comes: do not force anything. Call again at once if anything changes."],
            Facts = ["The script did not end the alarm: a nurse comes for it today. It never becomes part of a routine visit on a later day."],
            Answers = found.Answers,
            RuledOut = found.RuledOut,
            ToTell = [setting.People.Pharmacist($"{patient.Name}: pump alarm not ended on the phone. Is another pump or bag needed?")],
        };
    }

    private static CareTask Task(AgencyAtHand agency, MendSetting setting, Patient patient, Line line, string label)
    {
        int Value(string rule) => (int)agency.Files.Policy.ValueOf(rule, agency.Today);
        return new CareTask
        {
            Id = TaskId,
            Patient = patient.Id.Value,
            Label = label,
            Opens = setting.Now,
            // As soon as a broken seal of the most urgent class: our own default.
            TargetBy = setting.Now + (60 * Value("seal.b1.target")),
            LateFrom = setting.Now + (60 * Value("seal.b1.max")),
            HardLatest = setting.Calendar.Minute(agency.Today.PlusDays(1), LocalTime.Midnight) - 1,
            SetupMinutes = Value("minutes.pumpcheck.setup") + patient.ExtraMinutes,
            WorkMinutes = Value("minutes.pumpcheck.work"),
            Skills = CareSkills.Of(CareItem.Set, line, null, patient),
            Critical = true,
            Weight = 1,
            Safety = true,
        };
    }
}
