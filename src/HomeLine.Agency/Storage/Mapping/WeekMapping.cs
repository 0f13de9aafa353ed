using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class WeekMapping : IEntityTypeConfiguration<WeekRow>
{
    public void Configure(EntityTypeBuilder<WeekRow> builder)
    {
        builder.NumberedRows("weeks").Changeable();
        builder.HasIndex(w => new { w.FirstDay, w.IsDraft }).IsUnique();
        builder.Property(w => w.Unmet).AsJson();
    }
}
