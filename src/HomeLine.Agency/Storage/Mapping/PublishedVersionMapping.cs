using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class PublishedVersionMapping : IEntityTypeConfiguration<PublishedVersion>
{
    public void Configure(EntityTypeBuilder<PublishedVersion> builder)
    {
        builder.ToTable("published_versions");
        builder.WrittenOnce().HasKey(v => new { v.FirstDay, v.Version });
        builder.Property(v => v.Week).AsJson();
    }
}
