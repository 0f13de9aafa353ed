using System.Collections.Immutable;
using HomeLine.LineCare.Lines;

namespace HomeLine.Exchange.Csv.Cells;

/// <summary>
/// The key of a need as a week keeps it, patient|Item|line|lumens|order, in the words of the files:
/// <c>dressing P03-1</c>, <c>connector P03-1 AB</c>, <c>labs P03-labs</c>. The patient is the row's own.
/// </summary>
internal static class CareKeyCell
{
    private const char Bar = '|';
    private const string Form = "Write the item, then its line, lumens or order, for example connector P03-1 AB.";

    public static string Read(Row row, string column, PatientId patient, string text)
    {
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length is 0 or > 4 || !Words<CareItem>.TryParse(words[0], out CareItem item))
        {
            row.Refuse(column, text, $"{Form} Items: {Words<CareItem>.All}.");
            return text;
        }

        string line = "", lumens = "", order = "";
        foreach (string word in words[1..])
        {
            if (row.Ties.Lines.ContainsKey(word) && line.Length == 0) line = word;
            else if (row.Ties.Orders.Contains(word) && order.Length == 0) order = word;
            else if (line.Length > 0 && lumens.Length == 0 && AreLumens(row.Ties.Lines[line], word)) lumens = word;
            else row.Refuse(column, text, $"{word} is no line, no order and no lumen of the line named before it. {Form}");
        }

        return string.Join(Bar, patient.Value, item.ToString(), line, lumens, order);
    }

    public static string Write(string key)
    {
        string[] parts = key.Split(Bar);
        return parts.Length == 5 && Enum.TryParse(parts[1], out CareItem item)
            ? string.Join(' ', ((ImmutableArray<string>)[Words<CareItem>.Of(item), parts[2], parts[3], parts[4]]).Where(part => part.Length > 0))
            : key;
    }

    private static bool AreLumens(Line? line, string word) =>
        line is null || word.All(letter => line.Lumens.Any(lumen => lumen.Label == letter.ToString()));
}
