using HomeLine.Agency.Quality;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class CaseReviewMapping : IEntityTypeConfiguration<CaseReview>
{
    public void Configure(EntityTypeBuilder<CaseReview> builder)
    {
        builder.NumberedRows("case_reviews").WrittenOnce();
        builder.Property(r => r.Id).IsRequired();
        builder.HasIndex(r => r.Id).IsUnique();
        builder.HasIndex(r => r.Entry);
        builder.OfPatient(r => r.Patient);
        builder.OnLine(r => r.Line);
    }
}
