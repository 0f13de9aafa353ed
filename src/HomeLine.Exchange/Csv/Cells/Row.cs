using System.Collections.Immutable;
using System.Globalization;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Exchange.Csv.Cells;

/// <summary>
/// One row being read. Each question for a cell answers with the value or notes the problem and answers with a stand-in;
/// a row with a problem is thrown away by the table that reads it, so stand-ins never leave this room.
/// </summary>
internal sealed partial class Row(string file, CsvLine line, IReadOnlyDictionary<string, int> columns, RosterTies ties, ProblemList problems)
{
    private const int LongestId = 64;
    private const int StatesShown = 10;

    public RosterTies Ties => ties;

    public int Line => line.Line;

    /// <summary>Whether every cell asked for so far was right.</summary>
    public bool IsSound { get; private set; } = true;

    public void Refuse(string column, string reason) => Refuse(column, Raw(column), reason);

    public void Refuse(string column, string value, string reason)
    {
        IsSound = false;
        problems.Add(file, line.Line, column, value, reason);
    }

    /// <summary>Refuses a second row that is about the same thing; what tells rows apart are these columns.</summary>
    public void OnlyOnce(params ReadOnlySpan<string> keys)
    {
        if (!IsSound) return;
        string cells = file;
        foreach (string key in keys) cells += "\n" + Trimmed(key);
        if (!ties.Rows.Add(cells)) Refuse(keys[^1], "Another row says this already. Give the latest only.");
    }

    public bool Has(string column) => Trimmed(column).Length > 0;

    /// <summary>Free text as it stands, spaces and line breaks kept.</summary>
    public string Text(string column) => FormulaGuard.Unprotect(Raw(column));

    public string RequiredText(string column)
    {
        string text = Text(column);
        if (string.IsNullOrWhiteSpace(text)) Missing(column);
        return text;
    }

    /// <summary>An identifier: no spaces and none of the marks that separate lists.</summary>
    public string Id(string column)
    {
        string id = Required(column);
        if (id.Length > LongestId || id.Any(c => char.IsWhiteSpace(c) || char.IsControl(c) || c is ';' or '|'))
            Refuse(column, $"An identifier has at most {LongestId} characters, without spaces, semicolons and bars.");
        return id;
    }

    public bool YesNo(string column, bool otherwise = false)
    {
        string word = Trimmed(column);
        if (word.Length == 0) return otherwise;
        if (word.Equals("yes", StringComparison.OrdinalIgnoreCase)) return true;
        if (!word.Equals("no", StringComparison.OrdinalIgnoreCase)) Refuse(column, "Write yes or no.");
        return false;
    }

    public bool RequiredYesNo(string column)
    {
        if (!Has(column)) Missing(column);
        return YesNo(column);
    }

    public T Word<T>(string column) where T : struct, Enum
    {
        if (!Has(column)) Missing(column, $"One of: {Words<T>.All}.");
        return OptionalWord<T>(column) ?? default;
    }

    public T? OptionalWord<T>(string column) where T : struct, Enum
    {
        string word = Trimmed(column);
        if (word.Length == 0) return null;
        if (Words<T>.TryParse(word, out T value)) return value;
        Refuse(column, $"This word is not known here. One of: {Words<T>.All}.");
        return null;
    }

    public T Flags<T>(string column) where T : struct, Enum
    {
        long all = 0;
        foreach (string word in List(column))
        {
            if (Words<T>.TryParse(word, out T value)) all |= Convert.ToInt64(value, CultureInfo.InvariantCulture);
            else Refuse(column, word, $"This word is not known here. Any of: {Words<T>.All}.");
        }

        return (T)Enum.ToObject(typeof(T), all);
    }

    /// <summary>Words separated by semicolons or spaces.</summary>
    public ImmutableArray<string> List(string column) =>
        [.. Trimmed(column).Split([';', ' ', '\t', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];

    /// <summary>Parts separated by semicolons alone, for parts that hold spaces themselves.</summary>
    public ImmutableArray<string> Parts(string column) =>
        [.. Trimmed(column).Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];

    public ImmutableArray<IsoDayOfWeek> Weekdays(string column)
    {
        var days = ImmutableArray.CreateBuilder<IsoDayOfWeek>();
        foreach (string word in List(column))
        {
            if (!WeekdayWords.TryParse(word, out IsoDayOfWeek day)) Refuse(column, word, $"This is no weekday. Any of: {WeekdayWords.All}.");
            else if (days.Contains(day)) Refuse(column, word, "This weekday is named twice.");
            else days.Add(day);
        }

        return days.ToImmutable();
    }

    public int? Whole(string column, int least, int most)
    {
        string text = Trimmed(column);
        if (text.Length == 0) return null;
        if (int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int value) && value >= least && value <= most)
            return value;
        Refuse(column, string.Create(CultureInfo.InvariantCulture, $"This must be a whole number from {least} to {most}."));
        return null;
    }

    public decimal? Number(string column, decimal least, decimal most)
    {
        string text = Trimmed(column);
        if (text.Length == 0) return null;
        if (ReadDecimal(text) is { } value && value >= least && value <= most) return value;
        Refuse(column, string.Create(CultureInfo.InvariantCulture,
            $"This must be a number from {least} to {most}, with a point before decimals and no unit."));
        return null;
    }

    public decimal RequiredNumber(string column, decimal least, decimal most)
    {
        if (!Has(column)) Missing(column);
        return Number(column, least, most) ?? least;
    }

    public int RequiredWhole(string column, int least, int most)
    {
        if (!Has(column)) Missing(column);
        return Whole(column, least, most) ?? least;
    }

    public PatientId Patient(string column = "patient")
    {
        string id = Required(column);
        if (id.Length > 0 && !ties.Patients.ContainsKey(id)) Refuse(column, "There is no such patient in patients.csv.");
        return new PatientId(id);
    }

    /// <summary>A line of that patient, when the cell names one.</summary>
    public LineId? LineOf(PatientId patient, string column = "line")
    {
        string id = Trimmed(column);
        if (id.Length == 0) return null;
        if (!ties.Lines.TryGetValue(id, out LineCare.Lines.Line? found)) Refuse(column, "There is no such line in lines.csv.");
        else if (found is not null && found.Patient != patient && ties.Patients.ContainsKey(patient.Value)) Refuse(column, $"This line belongs to patient {found.Patient}.");
        return new LineId(id);
    }

    /// <summary>Letters of lumens that the line has.</summary>
    public ImmutableArray<string> LumensOf(LineId? lineId, string column)
    {
        ImmutableArray<string> labels = List(column);
        if (labels.IsEmpty) return labels;
        if (lineId is null) Refuse(column, "Lumens are named but no line is.");
        else if (ties.Lines.GetValueOrDefault(lineId.Value.Value) is { } known)
            foreach (string label in labels.Where(label => known.Lumens.All(lumen => lumen.Label != label)))
                Refuse(column, label, $"Line {known.Id} has no such lumen; it has {string.Join(" ", known.Lumens.Select(lumen => lumen.Label))}.");
        return labels;
    }

    public string Nurse(string id, string column)
    {
        if (!ties.Nurses.Contains(id)) Refuse(column, id, "There is no such nurse in nurses.csv.");
        return id;
    }

    public string State(string name, string column)
    {
        if (!ties.States.Contains(name))
            Refuse(column, name, $"This state is not in agency.csv. States there: {string.Join("; ", ties.States.Order(StringComparer.Ordinal).Take(StatesShown))}.");
        return name;
    }

    public string Required(string column)
    {
        string text = Trimmed(column);
        if (text.Length == 0) Missing(column);
        return text;
    }

    public string Trimmed(string column) => Text(column).Trim();

    internal static decimal? ReadDecimal(string text) =>
        decimal.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal value)
            ? value
            : null;

    private void Missing(string column, string hint = "")
    {
        IsSound = false;
        problems.Add(file, line.Line, column, "", hint.Length == 0 ? "A value is needed here." : "A value is needed here. " + hint);
    }

    private string Raw(string column) => columns.TryGetValue(column, out int index) ? line.Fields[index] : "";
}
