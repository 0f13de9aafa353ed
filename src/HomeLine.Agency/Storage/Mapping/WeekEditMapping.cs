using HomeLine.Agency.WeekEditing;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class WeekEditMapping : IEntityTypeConfiguration<WeekEdit>
{
    public void Configure(EntityTypeBuilder<WeekEdit> builder)
    {
        builder.ToTable("week_edits");
        builder.WrittenOnce().HasKey(e => new { e.FirstDay, e.Number });
        builder.Property(e => e.Before).AsJson();
        builder.Property(e => e.After).AsJson();
        builder.Property(e => e.Pins).AsJson();
        builder.Property(e => e.Unpins).AsJson();
    }
}
