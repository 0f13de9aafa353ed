using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using HomeLine.Agency.Mending;

namespace HomeLine.Benchmarks.Branch;

/// <summary>What the answers of many troubles cost, summed, and a fingerprint of every word of them: two programs with the same line gave the same answers.</summary>
internal sealed class OfferedSums
{
    private readonly List<MendPrice> _prices = [];
    private readonly StringBuilder _words = new();

    public void Add(MendOffer offer)
    {
        _prices.AddRange(offer.Answers.Select(a => a.Price));
        foreach (BrokenInWords broken in offer.CannotWait) _words.AppendLine(broken.ToString());
        foreach (MendAnswer answer in offer.Answers)
        {
            _words.AppendJoin('\n', answer.Changes.Select(c => c.Words)).AppendJoin('\n', answer.ToTell.Select(t => t.ToString())).AppendLine(answer.Price.ToString());
            _words.AppendJoin('\n', answer.Unmet.Select(u => $"{u} {string.Join(' ', u.WouldHelp)}")).AppendJoin('\n', answer.After);
        }
    }

    public void Print() => Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
        $"  answers cost: critical {_prices.Sum(p => p.Critical)}, late {_prices.Sum(p => p.Late)}, unmet {_prices.Sum(p => p.Unmet)}, disruption {_prices.Sum(p => p.Disruption)}, "
        + $"families {_prices.Sum(p => p.Families)}, driving {_prices.Sum(p => p.DrivingDelta)}, overtime {_prices.Sum(p => p.Overtime)}; words {Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(_words.ToString())))[..12]}"));
}
