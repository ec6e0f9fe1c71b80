//! How much one address may ask for: a bucket that fills again steadily, and is emptied by each request.

use std::collections::BTreeMap;
use std::net::IpAddr;
use std::sync::{Mutex, PoisonError};
use std::time::Instant;

/// Buckets of every address that asked lately.
#[derive(Debug)]
pub struct Pace {
    most: f64,
    each_second: f64,
    buckets: Mutex<BTreeMap<IpAddr, Bucket>>,
}

#[derive(Clone, Copy, Debug)]
struct Bucket {
    left: f64,
    at: Instant,
}

/// So many addresses are kept in mind; full buckets are forgotten first, since a new one is full as well.
const MOST_ADDRESSES: usize = 4096;

impl Pace {
    /// A bucket for each address that holds so much and fills so fast.
    pub const fn new(most: f64, each_second: f64) -> Self {
        Self { most, each_second, buckets: Mutex::new(BTreeMap::new()) }
    }

    /// Takes one out of an address's bucket; false where it is empty.
    pub fn allows(&self, address: IpAddr) -> bool {
        self.takes(address, Instant::now(), 1.0)
    }

    /// Whether anything is left, without taking it.
    pub fn has_left(&self, address: IpAddr) -> bool {
        self.takes(address, Instant::now(), 0.0)
    }

    fn takes(&self, address: IpAddr, now: Instant, what: f64) -> bool {
        let mut buckets = self.buckets.lock().unwrap_or_else(PoisonError::into_inner);
        if buckets.len() >= MOST_ADDRESSES {
            buckets.retain(|_, bucket| self.filled(*bucket, now) < self.most);
            if buckets.len() >= MOST_ADDRESSES {
                buckets.pop_first();
            }
        }
        let bucket = buckets.entry(of_one(address)).or_insert(Bucket { left: self.most, at: now });
        let left = self.filled(*bucket, now);
        let allowed = left >= 1.0;
        *bucket = Bucket { left: if allowed { left - what } else { left }, at: now };
        allowed
    }

    fn filled(&self, bucket: Bucket, now: Instant) -> f64 {
        let passed = now.saturating_duration_since(bucket.at).as_secs_f64();
        passed.mul_add(self.each_second, bucket.left).min(self.most)
    }
}

/// Whoever has one address of the newer kind has a whole net of them: they count as one.
fn of_one(address: IpAddr) -> IpAddr {
    match address.to_canonical() {
        IpAddr::V6(six) => {
            let mut parts = six.segments();
            parts[4..].fill(0);
            IpAddr::V6(parts.into())
        }
        four => four,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::time::Duration;

    #[test]
    fn a_bucket_empties_and_fills_again() {
        let (pace, begin) = (Pace::new(3.0, 2.0), Instant::now());
        let at = |ms| begin + Duration::from_millis(ms);
        let one: IpAddr = [192, 0, 2, 1].into();
        assert!((0..3).all(|_| pace.takes(one, begin, 1.0)));
        assert!(!pace.takes(one, at(400), 1.0), "four tenths of a second bring eight tenths of a request");
        assert!(pace.takes(one, at(500), 1.0));
        assert!(!pace.takes(one, at(500), 1.0));
        assert!(pace.takes([192, 0, 2, 2].into(), at(500), 1.0), "another's bucket is its own");
        assert!((0..3).all(|_| pace.takes(one, at(60_000), 1.0)));
        assert!(!pace.takes(one, at(60_000), 1.0), "it holds no more than it holds");
    }

    #[test]
    fn a_net_counts_as_one_and_memory_stays_small() {
        let (pace, now) = (Pace::new(1.0, 0.0), Instant::now());
        assert!(pace.takes("2001:db8::1".parse().expect("an address"), now, 1.0));
        assert!(!pace.takes("2001:db8::ffff:2".parse().expect("an address"), now, 1.0));
        for n in 0..20_000_u32 {
            pace.takes(IpAddr::V4(n.into()), now, 1.0);
        }
        assert!(pace.buckets.lock().expect("buckets").len() <= MOST_ADDRESSES);
    }
}
