namespace HomeLine.LineCare.Recording;

/// <summary>What somebody wrote about an allergy. The words are kept as they are; whether they mean a material the program has to keep out is asked,
/// never guessed.</summary>
public static class AllergyNote
{
    /// <summary>The code of an allergy in free text that no rule can act on.</summary>
    public const string Uncoded = "allergy-uncoded";

    /// <summary>Words, or beginnings of words, that name chlorhexidine or an adhesive.</summary>
    private static readonly string[] Known = ["chlorhex", "chg", "adhesive", "tape", "plaster"];

    /// <summary>What is asked; empty when nothing was written, or what was written is on file as a risk already.</summary>
    /// <param name="text">As written.</param>
    /// <param name="risks">The risks on file.</param>
    public static RecordingReply? Ask(string? text, RiskFactors risks)
    {
        if (string.IsNullOrWhiteSpace(text)) return null;
        var words = text.ToLowerInvariant();
        var named = Known.Any(word => words.Contains(word, StringComparison.Ordinal));
        if (named && (risks & (RiskFactors.ChlorhexidineAllergy | RiskFactors.AdhesiveInjury)) != 0) return null;
        return new RecordingReply(Uncoded, ReplyWeight.Ask, null, null, null, named
            ? $"\u201c{text.Trim()}\u201d names a material: is it an allergy to chlorhexidine, or an injury from adhesive? Until it is on file as one, no material is kept out."
            : $"\u201c{text.Trim()}\u201d is kept as written. Does it mean chlorhexidine or adhesive? Until it is on file as one, no material is kept out.");
    }
}
