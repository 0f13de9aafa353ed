using System.Collections.Immutable;
using HomeLine.Planning.Problem;

namespace HomeLine.Benchmarks.Weeks;

/// <summary>A patient's care in an invented week: a dressing with its window, and for some draws, flushes, chains of two days, doses every day.</summary>
internal static class InventedCare
{
    public static IEnumerable<CareTask> Of(Draw draw, PatientHome patient)
    {
        int kind = draw.Below(100), weight = 5 * (1 + (draw.Percent(25) ? 1 : 0));
        bool feeding = draw.Percent(20);
        ImmutableArray<string> skills = feeding ? ["PICC", "PN"] : ["PICC"];
        if (kind < 3) return Doses(draw, patient);
        if (kind < 8) return Chain(draw, patient, skills, weight);
        var care = new List<CareTask> { Window(draw, patient, "dressing", 30, skills, weight, 3) };
        care.Add(Window(draw, patient, "connector", 10, skills, 3, 4));
        if (draw.Percent(45)) care.Add(Draws(draw, patient));
        if (draw.Percent(20)) care.Add(Window(draw, patient, "port flush", 15, ["PORT"], 1, 6));
        if (draw.Percent(10)) care.Add(Window(draw, patient, "teaching", 40, ["SOC"], 3, 3));
        if (kind is 8 or 9) care.Add(Level(draw, patient));
        return care;
    }

    private static CareTask Window(Draw draw, PatientHome patient, string label, int minutes, ImmutableArray<string> skills, int weight, int days)
    {
        // Some windows opened before the week and a few ended before it.
        int last = draw.Percent(2) ? -1 - draw.Below(2) : draw.Below(InventedWeek.Days), first = Math.Max(0, last - days + 1);
        return new CareTask
        {
            Id = $"{patient.Id} {label}",
            Patient = patient.Id,
            Label = label,
            Opens = first * 1440,
            LateFrom = (last + 1) * 1440,
            SetupMinutes = 15,
            WorkMinutes = minutes,
            Skills = skills,
            Weight = weight,
        };
    }

    private static CareTask Draws(Draw draw, PatientHome patient)
    {
        int last = 1 + draw.Below(4);
        CareTask task = Window(draw, patient, "draw", 10, ["LAB"], 3, 3);
        return task with { Opens = (last - 1) * 1440, LateFrom = (last + 1) * 1440, DrawToDropMinutes = 180 };
    }

    private static CareTask Level(Draw draw, PatientHome patient)
    {
        int day = draw.Below(5), from = InventedWeek.At(day, 9 + draw.Below(6));
        CareTask task = Window(draw, patient, "level", 10, ["LAB"], 5, 1);
        return task with
        {
            Opens = day * 1440,
            LateFrom = (day + 1) * 1440,
            HardLatest = ((day + 1) * 1440) - 1,
            StartSpans = [new Span(from, from + 25)],
            Critical = true,
        };
    }

    private static IEnumerable<CareTask> Chain(Draw draw, PatientHome patient, ImmutableArray<string> skills, int weight)
    {
        int first = draw.Below(2);
        for (int day = first; day < InventedWeek.Days; day += 2)
        {
            CareTask task = Window(draw, patient, "gauze", 25, skills, weight, 1);
            yield return task with
            {
                Id = $"{patient.Id} gauze {day}",
                Opens = Math.Max(0, day - 1) * 1440,
                LateFrom = (day + 1) * 1440,
                After = day == first ? null : $"{patient.Id} gauze {day - 2}",
                MinGap = 1440,
                MaxGap = 2880,
                GapInDays = true,
            };
        }
    }

    private static IEnumerable<CareTask> Doses(Draw draw, PatientHome patient)
    {
        int hour = 9 + draw.Below(2);
        for (int day = 0; day < InventedWeek.Days - 2; day++)
        {
            yield return new CareTask
            {
                Id = $"{patient.Id} dose {day}",
                Patient = patient.Id,
                Label = "dose",
                Opens = day * 1440,
                LateFrom = (day + 1) * 1440,
                HardLatest = ((day + 1) * 1440) - 1,
                StartSpans = [new Span(InventedWeek.At(day, hour), InventedWeek.At(day, hour + 2))],
                SetupMinutes = 10,
                WorkMinutes = 40,
                Skills = ["PICC"],
                Weight = 5,
                Critical = true,
            };
        }
    }
}
