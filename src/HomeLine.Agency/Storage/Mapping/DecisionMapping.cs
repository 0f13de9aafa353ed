using HomeLine.Agency.Decisions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class DecisionMapping : IEntityTypeConfiguration<DecisionRecord>
{
    public void Configure(EntityTypeBuilder<DecisionRecord> builder)
    {
        builder.NumberedRows("decisions").WrittenOnce();
        builder.Property(d => d.Id).IsRequired();
        builder.HasIndex(d => d.Id).IsUnique();
        // The database's own word that no question is decided twice.
        builder.HasIndex(d => new { d.Key, d.Round }).IsUnique();
        builder.OfPatient(d => d.Patient);
        builder.OnLine(d => d.Line);
    }
}
